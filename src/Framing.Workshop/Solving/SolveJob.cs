using Framing.Imaging;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Workshop;

/// <summary>Finds where a frame points: reads it, finds its stars and matches them.</summary>
/// <remarks>
/// What is expected of place and scale, by the caller or by the file's own header, is looked at first; where that finds
/// nothing the whole sky is searched.
/// </remarks>
public static class SolveJob
{
    private const double ArcsecondsPerRadian = 648_000.0 / Math.PI;

    /// <summary>Solves a frame.</summary>
    /// <param name="order">The frame, and what is known of it.</param>
    /// <param name="token">Stops the work.</param>
    /// <returns>Where it points, or why that cannot be said.</returns>
    /// <exception cref="Framing.Fits.UnreadableFileException">The file cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SolveResult Run(SolveOrder order, CancellationToken token = default)
    {
        ArgumentNullException.ThrowIfNull(order);
        var facts = PictureFile.Inspect(order.Path);
        var near = order.Near ?? facts.Sky?.Centre;
        var scale = order.Scale ?? ScaleOf(facts);
        var stars = order.Stars ?? ReferenceStars.Embedded;

        // The catalogue is made ready while the frame is read and its stars are found.
        var ready = Task.Run(() => stars.Prepare(near is null || scale is null), token);
        var found = StarFinder.Find(PictureFile.Read(order.Path), null, token);
        ready.GetAwaiter().GetResult();

        var messages = new List<string>();
        if (facts.Rig.Middle is null && facts.Rig.Start is null)
        {
            messages.Add(
                FormattableString.Invariant(
                    $"The file does not say when it was taken: the stars are placed for {order.Now.UtcDateTime:d MMM yyyy}."
                )
            );
        }

        if (found.Verdict is StarVerdict.Even or StarVerdict.Overexposed or StarVerdict.Daylight)
        {
            return Refused(facts, found, found.Complaint!, messages);
        }

        var answer = FrameSolver.Solve(
            new(
                [.. found.Stars.Select(star => new DetectedStar(star.Position, star.Flux))],
                facts.Width,
                facts.Height
            )
            {
                Stars = stars,
                JulianYear = TerrestrialTime
                    .FromUtc((facts.Rig.Middle ?? facts.Rig.Start ?? order.Now).UtcDateTime)
                    .JulianYear,
                Near = near,
                Scale = scale,
                ElsewhereToo = true,
            },
            token
        );
        if (answer.Solution is not { } solution)
        {
            return Refused(facts, found, WhyNot(answer.Refusal, found), messages);
        }

        Compare(order, solution, facts, messages);
        if (found.Verdict != StarVerdict.Stars)
        {
            messages.Add($"Solved all the same, but {found.Complaint}.");
        }

        return new()
        {
            Facts = facts,
            Found = found,
            Solution = solution,
            WhyNot = null,
            Sky = SkyFacts.Of(
                solution.Fit.Coordinates,
                facts.Width,
                facts.Height,
                facts.RowsTopDown
            ),
            Messages = messages,
        };
    }

    private static SolveResult Refused(
        PictureFacts facts,
        FoundStars found,
        string why,
        List<string> messages
    ) =>
        new()
        {
            Facts = facts,
            Found = found,
            Solution = null,
            WhyNot = why,
            Sky = null,
            Messages = messages,
        };

    private static string WhyNot(SolveRefusal refusal, FoundStars found) =>
        found.Verdict != StarVerdict.Stars ? found.Complaint!
        : refusal == SolveRefusal.TooFewStars
            ? FormattableString.Invariant(
                $"too few stars to be certain: {found.Stars.Count} found, {FrameSolver.EnoughStars} are wanted; expose longer"
            )
        : FormattableString.Invariant(
            $"its {found.Stars.Count} stars match nothing: no field of 1 to 30° of the catalogue looks like this; trailed stars, or a field so small that a deeper star table is needed"
        );

    /// <summary>What the file itself says of its scale: by a solution it has, else by focal length and pixel size.</summary>
    private static Angle? ScaleOf(PictureFacts facts) =>
        facts.Sky is { } sky ? Angle.FromRadians(Math.Sqrt(sky.ScaleX.Radians * sky.ScaleY.Radians))
        : facts.Rig is { FocalLengthMillimetres: { } focal, PixelMicrometres: { } pixel }
            ? Angle.FromArcseconds(ArcsecondsPerRadian * 1e-3 * pixel / focal)
        : null;

    /// <summary>Says so when the frame is not where it was expected.</summary>
    private static void Compare(
        SolveOrder order,
        SolvedFrame solution,
        PictureFacts facts,
        List<string> messages
    )
    {
        var width = solution.Scale.Degrees * Math.Max(facts.Width, facts.Height);
        if (order.Near is { } near)
        {
            var away = near.SeparationTo(solution.Centre).Degrees;
            if (away > 2.0 * width)
            {
                messages.Add(
                    FormattableString.Invariant(
                        $"It points {away:0.0}° away from where it was said to be near."
                    )
                );
            }
        }

        if (
            order.Scale is { } scale
            && Math.Abs((solution.Scale / scale) - 1.0) is > 0.03 and var off
        )
        {
            messages.Add(
                FormattableString.Invariant(
                    $"Its scale is {solution.Scale.Arcseconds:0.000}″ a pixel, {100.0 * off:0} % off the {scale.Arcseconds:0.###}″ that were given."
                )
            );
        }
    }
}
