using Framing.Imaging;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Workshop;

/// <summary>Finds where a frame looks: by the solution that it carries, else by its stars.</summary>
internal static class SkyFinder
{
    /// <summary>What the middle of a frame with a solution of its own is taken to be worth, in pixels (common practice).</summary>
    private const double HeaderPixels = 0.5;

    /// <summary>How far the true scale may be from the one that the rig promises.</summary>
    private const double ScaleTolerance = 0.05;

    /// <summary>Finds it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="facts">What it is.</param>
    /// <param name="scale">Sky per pixel as the rig has it; null when not known.</param>
    /// <param name="near">Where it ought to look; null when not known. Elsewhere is looked after that, too.</param>
    /// <param name="reason">Why it cannot be told; empty when it can.</param>
    /// <param name="found">Its stars, where they were found already.</param>
    /// <returns>Where it looks; null when that cannot be told.</returns>
    /// <exception cref="Fits.UnreadableFileException">It cannot be read.</exception>
    public static SolvedSky? Find(
        string path,
        PictureFacts facts,
        Angle? scale,
        SkyDirection? near,
        out string reason,
        FoundStars? found = null
    )
    {
        reason = string.Empty;
        if (facts.Sky is { } own)
        {
            var pixel = Math.Sqrt(own.ScaleX.Radians * own.ScaleY.Radians);
            var arm = double.Hypot(facts.Width, facts.Height) / 2.0;
            return new(
                own,
                Angle.FromRadians(HeaderPixels * pixel),
                Angle.FromRadians(HeaderPixels / arm)
            );
        }

        var stars = found ?? StarFinder.Find(PictureFile.Read(path, int.MaxValue));
        if (stars.Complaint is { } complaint)
        {
            reason = complaint;
            return null;
        }

        var request = new SolveRequest(
            [.. stars.Stars.Select(star => new DetectedStar(star.Position, star.Flux))],
            facts.Width,
            facts.Height
        )
        {
            Scale = scale,
            ScaleTolerance = ScaleTolerance,
            Near = near,
            JulianYear = (facts.Rig.Middle ?? facts.Rig.Start) is { } time
                ? TerrestrialTime.FromUtc(time.UtcDateTime).JulianYear
                : 2000.0,
        };
        var answer = FrameSolver.Solve(request);
        if (answer.Solution is null && near is not null)
        {
            answer = FrameSolver.Solve(request with { Near = null });
        }

        if (
            answer.Solution is not { } solution
            || SkyFacts.Of(solution.Fit.Coordinates, facts.Width, facts.Height, facts.RowsTopDown)
                is not { } sky
        )
        {
            reason =
                answer.Refusal == SolveRefusal.TooFewStars
                    ? FormattableString.Invariant(
                        $"its {stars.Stars.Count} stars are too few to tell where it looks; expose longer"
                    )
                    : FormattableString.Invariant(
                        $"its {stars.Stars.Count} stars fit nowhere on the sky at the scale of the plan's rig; look after focal_length_mm, pixel_um and the focus"
                    );
            return null;
        }

        return new(sky, solution.Fit.Precision.Centre, solution.Fit.Precision.Angle);
    }
}
