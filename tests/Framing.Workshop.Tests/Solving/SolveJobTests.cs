namespace Framing.Workshop.Tests;

public sealed class SolveJobTests
{
    // When the frames of the real sky were taken.
    private static readonly DateTimeOffset July2019 = new(2019, 7, 29, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Run_OnFramesOfTheRealSky_FindsTensOfStarsAndOneFieldWidth()
    {
        var frames = RealFrames.All();
        var widths = new List<double>();
        foreach (var frame in frames)
        {
            var result = Run(frame);
            var solution = result.Solution;
            Assert.NotNull(solution);
            Assert.True(solution.Fit.Used.Count >= 60, frame);
            Assert.InRange(solution.Fit.RmsPixels, 0.0, 0.3);
            Assert.InRange(solution.Fit.LargestPixels, 0.0, 1.0);
            Assert.InRange(solution.FalseMatchProbability, 0.0, 1e-100);
            Assert.False(result.Sky!.DisplayedMirrored);
            widths.Add(result.Sky.FieldWidth!.Value.Degrees);
        }

        // The three of them, all of one camera and lens.
        Assert.True(frames.Length is 0 or 3, string.Join(", ", frames));
        Assert.All(widths, width => Assert.InRange(width, 11.1, 11.7));
        Assert.True(frames.Length == 0 || widths.Max() - widths.Min() < 0.01);
    }

    [Fact]
    public void Run_OnTheDemoFrame_FindsItWhereItsHeaderSays()
    {
        var path = Path.Combine(TestFolders.Root, "demo-data", "hearth-wide.fits");
        var result = Run(path);
        Assert.Null(result.WhyNot);
        Assert.NotNull(result.Solution);
        var stated = result.Facts.Sky!;
        Assert.InRange(
            result.Solution.Centre.SeparationTo(stated.Centre) / stated.ScaleX,
            0.0,
            0.05
        );
        Assert.Equal(
            stated.DisplayedPositionAngle.Degrees,
            result.Sky!.DisplayedPositionAngle.Degrees,
            0.002
        );
        Assert.Equal(
            result.Facts.Rig.FocalLengthMillimetres!.Value,
            result.FocalLengthMillimetres!.Value,
            0.05
        );
    }

    private static SolveResult Run(string path) =>
        SolveJob.Run(new() { Path = path, Now = July2019 }, TestContext.Current.CancellationToken);
}
