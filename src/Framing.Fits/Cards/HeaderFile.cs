using System.Text;

namespace Framing.Fits;

/// <summary>A file that holds header cards: a FITS file, or a text with one card a line.</summary>
public static class HeaderFile
{
    /// <summary>A text of cards longer than this is none.</summary>
    private const int MostBytes = 4 * 1024 * 1024;

    /// <summary>Reads the header of a FITS file (of its image, else of its primary unit) or of a text of cards.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The header.</returns>
    /// <exception cref="UnreadableFileException">It cannot be read, or is neither.</exception>
    public static FitsHeader Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        using var source = ByteSource.Open(path);
        return Read(source);
    }

    internal static FitsHeader Read(ByteSource source)
    {
        Span<byte> start = stackalloc byte[FitsCard.Length];
        start = start[..(int)Math.Min(start.Length, source.Length)];
        source.ReadExactly(0, start);
        if (FitsFile.IsFits(start) && start.IndexOfAny((byte)'\n', (byte)'\r') < 0)
        {
            return UnitWithImage(source);
        }

        if (source.Length is 0 or > MostBytes)
        {
            throw new UnreadableFileException(
                source.Name,
                "file",
                FormattableString.Invariant($"{source.Length} bytes"),
                "a text of header cards, one a line, is shorter than 4 MB and not empty"
            );
        }

        var bytes = new byte[source.Length];
        source.ReadExactly(0, bytes);
        if (bytes.AsSpan().Contains((byte)0))
        {
            throw new UnreadableFileException(
                source.Name,
                "file",
                "it is no text",
                "give a text of header cards, one a line, or a FITS file"
            );
        }

        // One character a byte, as in a FITS header; the byte order mark of a text in UTF-8 is no card.
        var text = Encoding.Latin1.GetString(
            bytes.AsSpan().StartsWith("\uFEFF"u8) ? bytes.AsSpan(3) : bytes
        );
        return HeaderReader.ReadLines(source.Name, text);
    }

    /// <summary>Here only the header is wanted, so data that are cut off do not matter.</summary>
    private static FitsHeader UnitWithImage(ByteSource source)
    {
        var primary = UnitReader.Read(source, 0, 0);
        var next = primary.DataStart + FitsFile.Blocks(primary.DataLength);
        return
            primary.Kind == FitsUnitKind.HeaderOnly
            && !primary.Header.Has("CTYPE1")
            && FitsFile.IsExtension(source, next)
            && UnitReader.Read(source, next, 1)
                is { Kind: FitsUnitKind.Image or FitsUnitKind.CompressedImage } image
            ? image.Kind == FitsUnitKind.Image
                ? image.Header
                : PlainHeader.Of(image.Header, TileLayout.Read(source.Name, image.Header))
            : primary.Header;
    }
}
