using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop.Tests;

public sealed class ForPointingTests
{
    private static readonly StrategySettings Defaults = Questions.Settings(
        ("least_overlap_arcmin", 1.0),
        ("most_overlap_fraction", 0.5)
    );

    /// <summary>
    /// Pointing and camera angle as sigmas in arcmin and degrees, dither in arcsec, drift in arcmin, part of the variance
    /// shared, declination, columns and rows (0 for as few as hold the target), camera turned at each panel.
    /// </summary>
    [Theory]
    [InlineData(3.0, 1.0, 0.0, 0.0, 0.0, 45.0, 2, 1, false)]
    [InlineData(3.0, 1.0, 20.0, 2.0, 0.0, 45.0, 3, 2, false)]
    [InlineData(8.0, 0.3, 0.0, 0.0, 0.0, 30.0, 2, 3, true)]
    [InlineData(2.0, 0.5, 30.0, 0.0, 0.0, 72.0, 2, 2, false)]
    [InlineData(0.5, 2.0, 0.0, 0.0, 0.0, -20.0, 3, 3, true)]
    [InlineData(20.0, 0.5, 20.0, 5.0, 0.0, -5.0, 2, 1, false)]
    [InlineData(6.0, 1.0, 0.0, 0.0, 0.6, 60.0, 4, 3, true)]
    [InlineData(1.0, 0.2, 0.0, 0.0, 0.0, 84.0, 1, 3, false)]
    [InlineData(4.0, 1.0, 10.0, 1.0, 0.0, 89.0, 2, 2, true)]
    [InlineData(5.0, 1.0, 20.0, 3.0, 0.0, 50.0, 0, 0, false)]
    public void Choose_NinetyNinePercent_IsReachedWithAnotherSeed(
        double sigma,
        double turn,
        double dither,
        double drift,
        double shared,
        double declination,
        int columns,
        int rows,
        bool turned
    )
    {
        using var strategy = Loaded();
        var request = Request(strategy, sigma, turn, declination) with
        {
            Grid = columns == 0 ? GridWish.Fewest : GridWish.Fixed(columns, rows),
            TurnCameraAtEachPanel = turned,
            SharedErrorPart = shared,
        };
        request = request with
        {
            Errors = request.Errors with
            {
                Dither = Angle.FromArcseconds(dither),
                Drift = Angle.FromArcminutes(drift),
            },
        };

        var plan = FramingStep.Frame(request).Plan!;

        var mosaic = Mosaic.Grid(
            plan.Pose,
            request.Rig.Field,
            plan.Overlap,
            plan.Columns,
            plan.Rows,
            mirrored: false,
            turned ? CameraTurning.TurnedAtEachPanel : CameraTurning.LeftAlone,
            OfDateFrame
                .At(TerrestrialTime.FromUtc(request.At))
                .ToIcrs(
                    plan.Pose.Centre.Declination.Radians >= 0.0
                        ? SkyDirection.NorthPole
                        : SkyDirection.SouthPole
                )
        );
        var (own, common) = (Math.Sqrt(1.0 - shared), Math.Sqrt(shared));
        var odds = ClosingTrials.Of(
            mosaic,
            request.Errors with
            {
                PointingSigma = request.Errors.PointingSigma * own,
                CameraAngleSigma = request.Errors.CameraAngleSigma * own,
            },
            settings: new()
            {
                Seed = 99,
                Trials = 40_000,
                SharedPointingSigma = request.Errors.PointingSigma * common,
                SharedAngleSigma = request.Errors.CameraAngleSigma * common,
            }
        );

        // 40,000 trials here and as many in the strategy: one standard error of the difference is 0.07 %, so that 0.3 % is
        // four of them.
        Assert.InRange(odds.ChanceNoGap, 0.987, 0.993);
        Assert.StartsWith("closed 99 times in 100", plan.OverlapReason, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_ErrorsTooLargeForThePanel_RefusesAndSaysWhatToDo()
    {
        using var strategy = Loaded();
        var outcome = FramingStep.Frame(
            Request(strategy, 60.0, 1.0, 45.0) with
            {
                Grid = GridWish.Fixed(2, 2),
            }
        );

        Assert.Null(outcome.Plan);
        Assert.Contains(
            "needs panels to share more than 50 %",
            outcome.Refusal,
            StringComparison.Ordinal
        );
        Assert.Contains("lower chance_no_gap", outcome.Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_SinglePanel_SharesTheLeast() =>
        Assert.Equal(
            Angle.FromArcminutes(7.0).Radians,
            Ask.Overlap(
                "for-pointing",
                Questions.Overlap() with
                {
                    Errors = Errors(3.0, 1.0),
                },
                ("least_overlap_arcmin", 7.0)
            ).Overlap!.Value.AlongWidth,
            1e-15
        );

    private static LoadedOverlap Loaded() =>
        PluginShelf.LoadOverlap(
            Shelves.Find(
                PluginShelf.Open(PluginShelf.FolderBesideProgram),
                StrategyKind.Overlap,
                "for-pointing"
            ),
            out _
        )!;

    private static FramingRequest Request(
        LoadedOverlap strategy,
        double sigma,
        double turn,
        double declination
    ) =>
        new()
        {
            Title = "Test",
            Rig = Questions.ShortLens,
            Target = TargetBuilder.FromOutline(
                "the cloud",
                SkyOutline.Ellipse(
                    SkyDirection.FromDegrees(40.0, declination),
                    Angle.FromDegrees(6.0),
                    Angle.FromDegrees(3.0),
                    PositionAngle.FromDegrees(90.0)
                )
            ),
            Rotation = new("north", new NorthUp(), StrategySettings.None),
            Overlap = new("for-pointing", strategy, Defaults),
            Errors = Errors(sigma, turn),
            At = new DateTime(2026, 12, 6, 0, 0, 0, DateTimeKind.Utc),
            Stars = new NoStars(),
        };

    private static PanelErrors Errors(double sigma, double turn) =>
        new(Angle.FromArcminutes(sigma), Angle.FromDegrees(turn), Angle.Zero, Angle.Zero);

    private sealed class NorthUp : IRotationStrategy
    {
        public RotationAnswer Choose(RotationQuestion question) =>
            RotationAnswer.Turn(PositionAngle.North, "north up");
    }

    private sealed class NoStars : IStarCount
    {
        public int Inside(SkyPolygon area, double faintestMagnitude) => 0;
    }
}
