using Framing.Sky;

namespace Framing.Solving;

/// <summary>Finds where a frame points from the stars it shows.</summary>
/// <remarks>
/// <list type="number">
/// <item>Quads of the frame's stars are looked up by their shape among quads of the catalogue; each find is a guess, and
/// the frame's other stars decide. Nothing is accepted unless chance is next to excluded; see
/// <see cref="SolvedFrame.FalseMatchProbability"/>.</item>
/// <item>The same request gives the same answer, whatever the machine or the number of threads.</item>
/// <item>Aberration, refraction and nutation of the frame go into its centre, scale and angle: the answer is where
/// the catalogue's places (ICRS, at the date) appear in the frame.</item>
/// </list>
/// </remarks>
public static class FrameSolver
{
    /// <summary>Below this many stars a frame that was not solved shows too few.</summary>
    public const int EnoughStars = 12;

    private const int LeastStars = 6;

    // A guess from four stars is a little off what the frame turns out to be: its scale, and its middle in field widths.
    private const double GuessedScale = 0.015;
    private const double GuessedPlace = 0.05;

    /// <summary>Solves a frame.</summary>
    /// <param name="request">What is known of it.</param>
    /// <param name="token">Stops the search.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size, scale or tolerance is not more than 0.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SolveAnswer Solve(SolveRequest request, CancellationToken token = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Width < 1 || request.Height < 1)
        {
            throw new ArgumentOutOfRangeException(
                nameof(request),
                FormattableString.Invariant($"{request.Width} x {request.Height}"),
                "A frame has a column and a row at least."
            );
        }

        if (request.Scale is { } scale && !(scale > Angle.Zero))
        {
            throw new ArgumentOutOfRangeException(
                nameof(request),
                scale,
                "The sky per pixel is more than 0."
            );
        }

        var field = new DetectionField(request.Detections, request.Width, request.Height);
        if (field.Count < LeastStars)
        {
            return new(null, SolveRefusal.TooFewStars, 0);
        }

        var guesses = 0;
        var solved = Solve(request, field, ref guesses, token);
        if (solved is null && request is { ElsewhereToo: true, HasHint: true })
        {
            solved = Solve(request with { Near = null, Scale = null }, field, ref guesses, token);
        }

        return new(
            solved,
            solved is not null ? SolveRefusal.None
                : field.Count < EnoughStars ? SolveRefusal.TooFewStars
                : SolveRefusal.MatchesNothing,
            guesses
        );
    }

    private static SolvedFrame? Solve(
        SolveRequest request,
        DetectionField field,
        ref int guesses,
        CancellationToken token
    )
    {
        var limits = Limits(request);
        var verifier = new Verifier(field, request.Stars, limits);
        var hinted = request.Near is not null && request.Scale is not null;
        for (var thoroughness = 1; thoroughness <= (hinted ? 2 : 1); thoroughness++)
        {
            var search = new QuadSearch(field, request.Stars, verifier, thoroughness, guesses);
            var finding = hinted
                ? HintedSearch.Search(search, request, limits, thoroughness, token)
                : Search(search, request.Stars, token);
            guesses = search.Guesses;
            if (finding is not null && Finish.Of(field, request, finding) is { } solved)
            {
                return solved;
            }
        }

        return null;
    }

    private static Finding? Search(QuadSearch search, ReferenceStars stars, CancellationToken token)
    {
        for (var number = 0; number < stars.IndexCount; number++)
        {
            if (search.Search(stars.Index(number), null, token) is { } finding)
            {
                return finding;
            }
        }

        return null;
    }

    private static SearchLimits Limits(SolveRequest request)
    {
        var longer = Math.Max(request.Width, request.Height);
        double least = request.LeastField.Radians / longer,
            most = request.MostField.Radians / longer;
        if (request.Scale is { } scale)
        {
            least = scale.Radians / (1.0 + request.ScaleTolerance) * (1.0 - GuessedScale);
            most = scale.Radians * (1.0 + request.ScaleTolerance) * (1.0 + GuessedScale);
        }

        return new(
            least,
            most,
            request.Near?.Vector,
            (request.NearFieldWidths + GuessedPlace) * longer * most
        );
    }
}
