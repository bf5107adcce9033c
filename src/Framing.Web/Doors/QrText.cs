using QRCoder;

namespace Framing.Web;

/// <summary>A link as a QR code made of block characters, for a terminal.</summary>
public static class QrText
{
    /// <summary>Draws a link.</summary>
    /// <param name="link">The link.</param>
    /// <returns>Lines of half-block characters with a light rim, readable on dark and on light terminals.</returns>
    public static string Of(Uri link)
    {
        ArgumentNullException.ThrowIfNull(link);
        using var data = QRCodeGenerator.GenerateQrCode(
            link.AbsoluteUri,
            QRCodeGenerator.ECCLevel.L
        );
        using var code = new AsciiQRCode(data);
        return code.GetGraphicSmall(drawQuietZones: true).ReplaceLineEndings("\n");
    }
}
