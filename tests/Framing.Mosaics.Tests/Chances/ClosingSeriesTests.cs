using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class ClosingSeriesTests
{
    private static readonly PanelErrors Errors = new(
        Angle.FromArcminutes(3.0),
        Angle.FromDegrees(1.0),
        Angle.Zero,
        Angle.Zero
    );

    [Theory]
    [InlineData(3, 2, CameraTurning.TurnedAtEachPanel)]
    [InlineData(2, 3, CameraTurning.LeftAlone)]
    public void ChanceNoGap_NearWhatIsWanted_IsThatOfAllTrials(
        int columns,
        int rows,
        CameraTurning turning
    )
    {
        var settings = new TrialSettings { Seed = 5, Trials = 10_000 };
        const double Wanted = 0.95;
        var series = new ClosingSeries(Errors, Wanted);
        var near = 0;
        foreach (var arcminutes in (double[])[9.0, 30.0, 16.0, 12.0, 13.0, 14.0, 13.5, 13.25])
        {
            var mosaic = Laid(arcminutes, columns, rows, turning);
            var all = ClosingTrials.Of(mosaic, Errors, settings: settings).ChanceNoGap;

            var chance = series.ChanceNoGap(mosaic, settings);

            // A look of 1,000 is enough where it is five of its standard errors away: 3.4 % at least.
            var isNear = Math.Abs(all - Wanted) < 0.01;
            near += isNear ? 1 : 0;
            Assert.Equal(all, chance, isNear ? 1e-9 : 0.03);
        }

        Assert.InRange(near, 1, 7);
    }

    [Fact]
    public void ChanceNoGap_SameQuestionsInTheSameOrder_GetTheSameAnswers()
    {
        double[] asked = [8.0, 14.0, 11.0, 12.0];

        Assert.Equal(Answers(threads: 1), Answers(threads: 5));

        List<double> Answers(int threads)
        {
            var series = new ClosingSeries(Errors, 0.9);
            return
            [
                .. asked.Select(arcminutes =>
                    series.ChanceNoGap(
                        Laid(arcminutes, 2, 2, CameraTurning.TurnedAtEachPanel),
                        new()
                        {
                            Trials = 6_000,
                            Seed = 3,
                            MostThreads = threads,
                        }
                    )
                ),
            ];
        }
    }

    [Fact]
    public void ChanceNoGap_SinglePanel_IsCertain() =>
        Assert.Equal(
            1.0,
            new ClosingSeries(Errors, 0.99).ChanceNoGap(
                Laid(0.0, 1, 1, CameraTurning.LeftAlone),
                new()
            )
        );

    [Fact]
    public void ChanceNoGap_NoTrials_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ClosingSeries(Errors, 0.99).ChanceNoGap(
                Laid(5.0, 2, 1, CameraTurning.LeftAlone),
                new() { Trials = 0 }
            )
        );

    private static Mosaic Laid(
        double overlapArcminutes,
        int columns,
        int rows,
        CameraTurning turning
    )
    {
        var overlap = Angle.FromArcminutes(overlapArcminutes).Radians;
        return Mosaic.Grid(
            new(SkyDirection.FromDegrees(40.0, 25.0), PositionAngle.FromDegrees(20.0)),
            new(0.0767, 0.0522),
            new(overlap, overlap * 1.2),
            columns,
            rows,
            mirrored: false,
            turning
        );
    }
}
