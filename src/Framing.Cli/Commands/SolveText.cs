using Framing.Sky;
using Framing.Solving;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>What <c>solve</c> prints for a person.</summary>
internal static class SolveText
{
    public static void Write(TextWriter output, string name, SolveResult result, string? written)
    {
        var solution = result.Solution!;
        var place = result.Sky!;
        var fit = solution.Fit;
        output.WriteLine(Path.GetFileName(name));
        Line(output, "centre", $"{PlaceText.Of(solution.Centre)}  (J2000)");
        Line(
            output,
            "field",
            FormattableString.Invariant(
                $"{place.FieldWidth?.Degrees:0.00}° × {place.FieldHeight?.Degrees:0.00}°, {solution.Scale.Arcseconds:0.000}″ a pixel"
            )
        );
        Line(
            output,
            "camera",
            FormattableString.Invariant(
                $"{Math.Round(place.DisplayedPositionAngle.Degrees, 2) % 360.0:0.##}°: the way up in the picture, from north through east{(place.DisplayedMirrored ? "; mirrored" : string.Empty)}"
            )
        );
        if (result.FocalLengthMillimetres is { } focal)
        {
            Line(
                output,
                "focal",
                FormattableString.Invariant(
                    $"{focal:0.0} mm with the file's {result.Facts.Rig.PixelMicrometres:0.###} µm pixels"
                )
            );
        }

        Line(
            output,
            "stars",
            FormattableString.Invariant(
                $"{fit.Used.Count} of {result.Found.Stars.Count} identified, on average {fit.Rms.Arcseconds:0.0}″ ({fit.RmsPixels:0.00} px) off{Bend(solution)}"
            )
        );
        Line(
            output,
            "errors",
            FormattableString.Invariant(
                $"centre ± {fit.Precision.Centre.Arcseconds:0.00}″, angle ± {fit.Precision.Angle.Degrees:0.0000}°, scale ± {100.0 * fit.Precision.RelativeScale:0.0000} % (1 sigma)"
            )
        );
        Line(output, "sure", Chance(solution.FalseMatchProbability));
        if (written is not null)
        {
            Line(
                output,
                "written",
                string.Equals(
                    Path.GetFileName(written),
                    Path.GetFileName(name),
                    StringComparison.Ordinal
                )
                    ? "into its header"
                    : $"beside it, in {Path.GetFileName(written)}"
            );
        }

        foreach (var message in result.Messages)
        {
            output.WriteLine("! " + message);
        }
    }

    private static string Bend(SolvedFrame solution) =>
        solution.Fit.Distortion is null ? string.Empty : ", lens distortion taken into account";

    /// <summary>The chance of a false match, in words for numbers nobody can picture.</summary>
    private static string Chance(double probability) =>
        FormattableString.Invariant(
            $"less than 1 in 10^{Math.Floor(-Math.Log10(probability)):0} that so many stars agree by chance"
        );

    private static void Line(TextWriter output, string head, string text) =>
        output.WriteLine($"  {head, -8} {text}");
}
