using Framing.Catalogue;
using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop.Tests;

public sealed class ForRegistrationTests
{
    [Theory]
    [InlineData(40.0, 60.0, 3, 2, 30.0, 13.0, false)]
    [InlineData(190.0, 27.0, 2, 2, 20.0, 12.0, true)]
    [InlineData(300.0, -40.0, 2, 1, 50.0, 11.0, false)]
    [InlineData(37.0, 86.0, 3, 1, 80.0, 13.5, false)]
    public void Choose_EveryStrip_HoldsEnoughStarsAndNoMoreThanItTakes(
        double ra,
        double dec,
        int columns,
        int rows,
        double stars,
        double faintest,
        bool turned
    )
    {
        using var strategy = Loaded();
        var request = Request(strategy, ra, dec, stars, faintest) with
        {
            Grid = GridWish.Fixed(columns, rows),
            TurnCameraAtEachPanel = turned,
        };

        var plan = FramingStep.Frame(request).Plan!;

        // Laid and counted here afresh, strip by strip.
        Assert.InRange(Poorest(plan.Overlap), stars, 1.25 * stars + 3.0);
        Assert.True(
            Poorest(new(plan.Overlap.AlongWidth * 0.97, plan.Overlap.AlongHeight * 0.97)) < stars
        );
        Assert.Equal(
            FormattableString.Invariant(
                $"{stars:0} stars to V {faintest:0.#} to expect in the poorest shared strip"
            ),
            plan.OverlapReason
        );

        double Poorest(PanelOverlap overlap)
        {
            var mosaic = Mosaic.Grid(
                plan.Pose,
                request.Rig.Field,
                overlap,
                columns,
                rows,
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
            return SharedStrip
                .Of(mosaic)
                .Min(strip =>
                    strip.Corners.Count == 0
                        ? 0.0
                        : StarDensity.Inside(new SkyPolygon(strip.Corners), faintest)
                );
        }
    }

    [Fact]
    public void Choose_MoreStarsThanThePanelHolds_RefusesAndSaysWhatToDo()
    {
        using var strategy = Loaded();

        var outcome = FramingStep.Frame(
            Request(strategy, 190.0, 27.0, 5_000.0, 11.0) with
            {
                Grid = GridWish.Fixed(2, 1),
            }
        );

        Assert.Null(outcome.Plan);
        Assert.Contains(
            "even 50 % of the panel shared leaves",
            outcome.Refusal,
            StringComparison.Ordinal
        );
        Assert.Contains("(least_stars)", outcome.Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_SinglePanel_SharesTheLeast() =>
        Assert.Equal(
            Angle.FromArcminutes(3.0).Radians,
            Ask.Overlap(
                "for-registration",
                Questions.Overlap(),
                ("least_stars", 20.0),
                ("faintest_mag", 13.0),
                ("least_overlap_arcmin", 3.0)
            ).Overlap!.Value.AlongHeight,
            1e-15
        );

    private static LoadedOverlap Loaded() =>
        PluginShelf.LoadOverlap(
            Shelves.Find(
                PluginShelf.Open(PluginShelf.FolderBesideProgram),
                StrategyKind.Overlap,
                "for-registration"
            ),
            out _
        )!;

    private static FramingRequest Request(
        LoadedOverlap strategy,
        double ra,
        double dec,
        double stars,
        double faintest
    ) =>
        new()
        {
            Title = "Test",
            Rig = Questions.ShortLens,
            Target = TargetBuilder.FromOutline(
                "the cloud",
                SkyOutline.Ellipse(
                    SkyDirection.FromDegrees(ra, dec),
                    Angle.FromDegrees(6.0),
                    Angle.FromDegrees(3.0),
                    PositionAngle.FromDegrees(90.0)
                )
            ),
            Rotation = new("north", new NorthUp(), StrategySettings.None),
            Overlap = new(
                "for-registration",
                strategy,
                Questions.Settings(
                    ("least_stars", stars),
                    ("faintest_mag", faintest),
                    ("least_overlap_arcmin", 1.0),
                    ("most_overlap_fraction", 0.5)
                )
            ),
            At = new DateTime(2026, 12, 6, 0, 0, 0, DateTimeKind.Utc),
            Stars = new CatalogueStarCount(),
        };

    private sealed class NorthUp : IRotationStrategy
    {
        public RotationAnswer Choose(RotationQuestion question) =>
            RotationAnswer.Turn(PositionAngle.North, "north up");
    }
}
