using Framing.Imaging;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Rehearsal.Tests.StarFinding;

/// <summary>Finding and solving stars on made frames of all kinds: binned, cropped, colour, trailed, cloudy ones among them.</summary>
public sealed class RenderedFramesTests(SweepRun run, ITestOutputHelper output)
    : IClassFixture<SweepRun>
{
    [Fact]
    public void Find_RenderedFrames_StarsWhereTheyAre()
    {
        Assert.All(
            run.Results,
            result =>
            {
                Assert.Equal(StarVerdict.Stars, result.Found.Verdict);

                // Nine of ten among the brightest exist.
                Assert.InRange(result.Pairing.WrongAmong(50), 0, 5);
                Assert.InRange(result.Pairing.WrongAmong(200), 0, 20);

                // Of the stars that stand well out and alone nearly all are found.
                Assert.InRange(result.Pairing.MissedShare, 0.0, 0.1);

                // The tail of a coma shifts the middle of a star by more outside than inside: no error of the finder.
                var camera = result.Frame.Recipe.Camera;
                var coma = Math.Abs(result.Frame.Recipe.Lens.ComaPx) / camera.Binning;
                Assert.InRange(result.Pairing.Rms, 0.0, 0.1 + (0.05 * coma));
            }
        );
        output.WriteLine(
            FormattableString.Invariant(
                $"{run.Results.Count} frames: false among the first 50 {run.Results.Sum(r => r.Pairing.WrongAmong(50))}, among 200 {run.Results.Sum(r => r.Pairing.WrongAmong(200))}; missed at most {run.Results.Max(r => r.Pairing.MissedShare):0.000}; rms at most {run.Results.Max(r => r.Pairing.Rms):0.000} px, usually {run.Results.Select(r => r.Pairing.Rms).Order().ElementAt(run.Results.Count / 2):0.000} px"
            )
        );
    }

    [Fact]
    public void Solve_RenderedFramesWithHint_Solved() =>
        Check(result => result.Hinted, least: 0.995);

    [Fact]
    public void Solve_RenderedFramesBlind_Solved() => Check(result => result.Blind, least: 0.98);

    private void Check(Func<SweepResult, SolveAnswer> answerOf, double least)
    {
        var (asked, solved, centred, turned) = (0, 0, 0, 0);
        var words = new List<string>();
        foreach (var result in run.Results)
        {
            var answer = answerOf(result);
            var enough = result.RealStars >= FrameSolver.EnoughStars;
            asked += enough ? 1 : 0;
            if (answer.Solution is not { } solution)
            {
                if (enough)
                {
                    words.Add(
                        FormattableString.Invariant(
                            $"{result.Number}: {answer.Refusal} with {result.RealStars} catalogue stars of {result.Found.Stars.Count}"
                        )
                    );
                }

                continue;
            }

            var frame = result.Frame;
            var middle = new PixelPosition((frame.Width + 1) / 2.0, (frame.Height + 1) / 2.0);
            var truth = frame.Coordinates;
            var seen = solution.Fit.Coordinates;
            _ = truth.TryMatrixAt(middle, out var trueMatrix);
            _ = seen.TryMatrixAt(middle, out var seenMatrix);
            var off =
                truth.PixelToSky(middle).SeparationTo(seen.PixelToSky(middle)) / trueMatrix.Scale;
            var turn = Math.Abs(
                Math.IEEERemainder(
                    trueMatrix.MeanPositionAngle.Degrees - seenMatrix.MeanPositionAngle.Degrees,
                    360.0
                )
            );
            var precision = solution.Fit.Precision;

            // No wrong solution, however few the stars.
            Assert.True(
                off < 20.0 && trueMatrix.IsMirrored == seenMatrix.IsMirrored && turn < 1.0,
                FormattableString.Invariant(
                    $"frame {result.Number} is solved wrongly: {off:0.0} px, {turn:0.000} deg"
                )
            );
            solved += enough ? 1 : 0;
            centred += enough && off <= 1.0 ? 1 : 0;
            turned += enough && turn <= Math.Max(0.01, 4.0 * precision.Angle.Degrees) ? 1 : 0;
            if (off > 1.0)
            {
                words.Add(FormattableString.Invariant($"{result.Number}: {off:0.00} px off"));
            }
        }

        var score = FormattableString.Invariant(
            $"{run.Results.Count} frames, {asked} with enough stars, {solved} solved, {centred} within 1 px, {turned} turned right; {string.Join("; ", words)}"
        );
        output.WriteLine(score);
        Assert.True(asked > 0.8 * run.Results.Count, score);
        Assert.True(solved >= Math.Floor(least * asked), score);
        Assert.True(centred >= Math.Floor(0.99 * solved), score);
        Assert.True(turned >= Math.Floor(0.99 * solved), score);
    }
}
