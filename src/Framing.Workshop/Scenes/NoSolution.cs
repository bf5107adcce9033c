using Framing.Imaging;

namespace Framing.Workshop;

/// <summary>Says in one line that a picture does not know its place on the sky, and what to do.</summary>
internal static class NoSolution
{
    public static string Explain(string path, PictureFacts facts)
    {
        var why = facts.Solution.WhyNone is { } reason ? $" ({reason.TrimEnd('.')})" : string.Empty;
        return $"{path}: the picture does not say where on the sky it lies{why}; "
            + $"put its FITS header cards (CTYPE, CRVAL, CRPIX, CD) into {Path.GetFileName(path)}.wcs.txt beside it, one a line.";
    }
}
