using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Finds a picture's solution: in cards beside it, or in its own header.</summary>
/// <remarks>
/// For ridge.png these are looked for, in this order: ridge.png.wcs.txt, ridge.wcs.txt, ridge.wcs, ridge.fits, ridge.fit.
/// A FITS picture takes cards from the two text files only; being placed there on purpose, they go before its own.
/// </remarks>
internal static class SolutionFinder
{
    private static readonly string[] TextEnds = [".wcs.txt"];
    private static readonly string[] AllEnds = [".wcs.txt", ".wcs", ".fits", ".fit"];

    /// <summary>Finds the solution.</summary>
    /// <param name="source">The picture.</param>
    /// <param name="besides">The file beside it that gave the solution, or null.</param>
    public static HeaderSolution Find(PictureSource source, out string? besides)
    {
        besides = Beside(source);
        if (besides is null)
        {
            var own = WorldCoordinatesReader.Read(source.Header);
            return source.Format != PictureFormat.Fits
                ? own with
                {
                    WhyNone =
                        $"A {source.Format.ToString().ToUpperInvariant()} holds no solution, and no file of header cards stands beside it.",
                }
                : own;
        }

        var header = HeaderFile.Read(besides);
        var solution = WorldCoordinatesReader.Read(header);
        var warnings = solution.Warnings.Concat(header.Warnings).ToList();
        if (source.Format == PictureFormat.Fits && source.Header.Has("CTYPE1"))
        {
            warnings.Add(
                $"The solution is that of {Path.GetFileName(besides)}, not the one in the picture's own header."
            );
        }

        return solution.Coordinates is { } coordinates
            ? Fitted(source, header, solution, coordinates, warnings)
            : solution with
            {
                Warnings = warnings,
            };
    }

    private static string? Beside(PictureSource source)
    {
        var ends = source.Format != PictureFormat.Fits ? AllEnds : TextEnds;
        var bare = Path.ChangeExtension(source.Name, null);
        return ends.SelectMany(end => new[] { source.Name + end, bare + end })
            .Where(path => path != source.Name)
            .FirstOrDefault(File.Exists);
    }

    /// <summary>Brings the cards' pixels to the picture's: another size, or rows that run the other way.</summary>
    private static HeaderSolution Fitted(
        PictureSource source,
        FitsHeader header,
        HeaderSolution solution,
        WorldCoordinates coordinates,
        List<string> warnings
    )
    {
        var width = header.Integer("IMAGEW") ?? header.Integer("NAXIS1") ?? source.Width;
        var height = header.Integer("IMAGEH") ?? header.Integer("NAXIS2") ?? source.Height;
        if (
            source.Format != PictureFormat.Fits
            && IsTopDown(header)
            && height is > 0 and < 10_000_000
        )
        {
            // The cards count from the row on top; the picture's pixels are counted from the bottom.
            coordinates = coordinates.WithRowsReversed((int)height);
        }

        if (width != source.Width || height != source.Height)
        {
            var factor = (double)width / source.Width;
            if (!(factor > 0.0) || Math.Abs((height / factor) - source.Height) > 1.0)
            {
                var why = FormattableString.Invariant(
                    $"The solution beside the picture is for {width} x {height} pixels, the picture has {source.Width} x {source.Height}."
                );
                warnings.Add(why);
                return solution with { Coordinates = null, WhyNone = why, Warnings = warnings };
            }

            warnings.Add(
                FormattableString.Invariant(
                    $"The solution beside the picture is for {width} x {height} pixels; it is carried to the picture's {source.Width} x {source.Height}."
                )
            );
            coordinates = coordinates.Binned(factor);
        }

        return solution with
        {
            Coordinates = coordinates,
            Warnings = warnings,
        };
    }

    private static bool IsTopDown(FitsHeader header) =>
        header.Has("SIMPLE")
        && string.Equals(
            header.Text("ROWORDER")?.Trim(),
            "TOP-DOWN",
            StringComparison.OrdinalIgnoreCase
        );
}
