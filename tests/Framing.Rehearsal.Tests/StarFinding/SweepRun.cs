using Framing.Fits;
using Framing.Imaging;
using Framing.Rehearsal.Tests.Frames;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Rehearsal.Tests.StarFinding;

/// <summary>Makes the frames of the sweep once, finds their stars and solves them with a hint and without.</summary>
public sealed class SweepRun
{
    private readonly Lazy<List<SweepResult>> results = new(Run);

    internal IReadOnlyList<SweepResult> Results => results.Value;

    /// <summary>200 frames up to 6 megapixels and five of 26 with FRAMING_LONG=1; 40 small ones always.</summary>
    private static IEnumerable<(int Number, double? Megapixels)> Frames()
    {
        var isLong = Environment.GetEnvironmentVariable("FRAMING_LONG") == "1";
        for (var number = 0; number < (isLong ? 200 : 40); number++)
        {
            yield return (number, isLong ? null : 0.35);
        }

        for (var number = 0; isLong && number < 5; number++)
        {
            yield return (1000 + number, 26.0);
        }
    }

    private static List<SweepResult> Run() =>
        [.. Frames().Select(frame => Of(frame.Number, frame.Megapixels))];

    private static SweepResult Of(int number, double? megapixels)
    {
        var cancel = TestContext.Current.CancellationToken;
        var recipe = Sweep.Recipe(number, megapixels);
        var frame = FrameMaker.Make(recipe, cancel);
        var picture = new Picture(
            frame.Width,
            frame.Height,
            Array.ConvertAll(frame.Samples, v => (float)v)
        )
        {
            SampleFormat = SampleFormat.UInt16,
        };
        var found = StarFinder.Find(picture, null, cancel);
        var blind = new SolveRequest(
            [.. found.Stars.Select(star => new DetectedStar(star.Position, star.Flux))],
            frame.Width,
            frame.Height
        )
        {
            JulianYear = TerrestrialTime.FromUtc(recipe.Exposure.Middle).JulianYear,
        };

        // A hint off by up to two field widths, and a scale off by up to 3 %.
        var random = new Random(number);
        var width = frame.Width * recipe.Scale.Degrees * recipe.Camera.Binning;
        var hint = blind with
        {
            Near = frame.Pose.Centre.Offset(
                PositionAngle.FromDegrees(360.0 * random.NextDouble()),
                Angle.FromDegrees(1.9 * width * random.NextDouble())
            ),
            Scale =
                recipe.Scale
                * (recipe.Camera.Binning * (1.0 + (0.029 * ((2.0 * random.NextDouble()) - 1.0)))),
        };
        return new(
            number,
            frame,
            found,
            new Pairing(frame, found),
            FrameSolver.Solve(hint, cancel),
            FrameSolver.Solve(blind, cancel)
        );
    }
}
