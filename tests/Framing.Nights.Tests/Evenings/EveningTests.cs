using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class EveningTests
{
    private static readonly ObservingSite Meadow = new(
        Angle.FromDegrees(46.2),
        Angle.FromDegrees(8.1),
        1650.0,
        new(830.0, -4.0)
    );

    private static readonly EveningRequest Usual = new()
    {
        Rig = new(250.0, new(4144, 2822, 4.63)),
        GuideStar = GuideStar.Corner,
        GuideScale = Angle.FromRadians(3.75e-3 / 120.0),
        Panels = [SkyDirection.FromDegrees(38.0, 61.5), SkyDirection.FromDegrees(43.0, 60.0)],
        Site = Meadow,
        LeastAltitude = Angle.FromDegrees(25.0),
        Evening = new(2026, 12, 5),
        SunBelow = Angle.FromDegrees(-18.0),
        Setup = TimeSpan.FromMinutes(60.0),
        Repoint = TimeSpan.FromMinutes(10.0),
        Flats = TimeSpan.FromMinutes(15.0),
        GoalPerPanel = TimeSpan.FromHours(2.0),
        ExpectedLoss = 0.2,
        Subs =
        [
            new(
                "H-alpha",
                TimeSpan.FromSeconds(180.0),
                TimeSpan.FromSeconds(4.0),
                3,
                TimeSpan.FromSeconds(25.0),
                1.0
            ),
        ],
        PolarError = Angle.FromArcminutes(15.0),
        Seeing = Angle.FromArcseconds(3.0),
        Battery = new(512.0, BatteryChemistry.LithiumIronPhosphate, 0.8, 0.2, 1.0),
        Loads = [new("cooling", 24.0, 0.6), new("mount", 9.0, 1.0), new("computer", 18.0, 1.0)],
        BatteryCelsius = -4.0,
    };

    [Fact]
    public void Of_TheUsualEvening_AddsUp()
    {
        var evening = Evening.Of(Usual);

        // 2 h of 180 s are 40 good subs, 50 to shoot, for two panels 100; 4144 x 2822 samples of 2 bytes in blocks of 2880.
        Assert.Equal(100, evening.Sums.Wanted);
        Assert.Equal(100, evening.Sums.InTheNight);
        Assert.Equal(23_397_120L, evening.Sums.FrameBytes);
        Assert.Equal(2_339_712_000.0, evening.Sums.Bytes);

        // 100 subs of 192.33 s and one change of panel of 10 min; an hour before, a quarter of an hour after. The first sub is
        // shot when it is dark and the hour is over: sunset 15:42, end of twilight 17:26 UTC.
        var shot = TimeSpan.FromSeconds((100 * (184.0 + (25.0 / 3.0))) + 600.0);
        var dark = evening.Dark!.Stretches[0].Start;
        Assert.Equal(
            dark + shot + TimeSpan.FromMinutes(15.0),
            evening.Session.To!.Value,
            TimeSpan.FromMilliseconds(1.0)
        );
        Assert.Equal(evening.Dark.Night.SunDown[0].Start, evening.Session.From);

        // 24·0.6 + 9 + 18 W; 512·0.8·0.86·0.8 Wh at -4 °C.
        var power = evening.Power!;
        Assert.Equal(41.4, power.AverageWatts, 1e-9);
        Assert.Equal(281.805, power.UsableWattHours, 1e-3);
        Assert.Equal(281.8048 / 41.4, power.HoursAvailable!.Value, 1e-6);
        Assert.Equal(evening.Session.Length.TotalHours, power.HoursNeeded, 1e-9);

        // 206.2648·4.63/250 and 206.2648·3.75/120 seconds of arc.
        Assert.Equal(3.0 / 3.8200, evening.Sums.PixelsPerSeeing, 1e-4);
        Assert.Equal(6.4458 / 3.8200, evening.Sums.GuideRatio!.Value, 1e-4);
        Assert.Equal(0.2 * 6.4458 / 3.8200, evening.Sums.GuideErrorPx!.Value, 1e-4);
    }

    [Fact]
    public void Trailing_OfTheUsualEvening_IsThatOfTheFormula()
    {
        var trailing = Evening.Of(Usual).Trailing;
        Assert.True(trailing.IsGuided);
        Assert.Equal(61.5, trailing.Declination.Degrees, 1e-9);

        // Hook 1989: E = 45000 S cos D / (T F A), F·A the distance on the sensor: here 23.213 mm from corner to corner.
        var diagonal = double.Hypot(4144, 2822) * 4.63e-3;
        var micrometres =
            15.0
            * 3.0
            * diagonal
            * (180.0 / Math.PI)
            / (45019.0 * Math.Cos(double.DegreesToRadians(61.5)));
        Assert.Equal(micrometres / 4.63, trailing.CornerPx!.Value, 2e-3);
        var sub = Assert.Single(trailing.Subs);
        Assert.Equal(trailing.CornerPx.Value, sub.GuidedPx);
        Assert.Equal(15.0 / sub.GuidedPx, sub.ErrorGuided.Arcminutes, 1e-6);
        Assert.Equal(15.0 / sub.UnguidedPx, sub.ErrorUnguided.Arcminutes, 1e-6);
        Assert.Equal(180.0 / sub.GuidedPx, trailing.Guided.Longest!.Value.TotalSeconds, 1e-3);

        // Unguided 15′ drift by 3.94″ a minute (from the vectors), 11.8″ in the sub; the corner's turn adds a little.
        Assert.InRange(sub.UnguidedPx, 11.8 / 3.82, 1.02 * 11.8 / 3.82);

        // The panels pass from 25° of altitude to the zenith and down: the air's squeeze of 4.4° is 10 times as strong below.
        Assert.InRange(trailing.Lowest!.Value.Degrees, 25.0, 50.0);
        Assert.InRange(trailing.Highest!.Value.Degrees, 70.0, 80.0);
        Assert.True(trailing.SqueezeLow!.Value.Vertical > trailing.SqueezeHigh!.Value.Vertical);
    }

    [Fact]
    public void Cautions_OfTheUsualEvening_NameWhatFallsShort()
    {
        var cautions = Evening.Of(Usual).Cautions;
        Assert.Equal(2, cautions.Count);
        Assert.Contains("The battery falls short by 0.", cautions[0], StringComparison.Ordinal);
        Assert.Contains("do not charge it below 0 °C", cautions[1], StringComparison.Ordinal);
        Assert.Equal(3, Evening.Of(Usual).Reminders.Count);
        Assert.Contains(
            "flip",
            Evening.Of(Usual with { Flips = true }).Reminders[1],
            StringComparison.Ordinal
        );
        Assert.Empty(Evening.Of(Usual with { Battery = null, Site = null }).Reminders);
    }

    [Fact]
    public void Cautions_Unguided_SayHowLongASubMayBe()
    {
        var evening = Evening.Of(
            Usual with
            {
                GuideStar = null,
                GuideScale = null,
                Battery = null,
            }
        );
        var caution = Assert.Single(evening.Cautions);
        Assert.StartsWith(
            "H-alpha: in a sub of 180 s stars trail by up to 3.1 px without a guider (with one 0.6 px), and 1 px is the limit. Shoot 58 s at most, or bring the mount's axis within 4.8′ of the pole.",
            caution,
            StringComparison.Ordinal
        );

        // What it names holds.
        var shorter = Usual.Subs[0] with
        {
            Sub = TimeSpan.FromSeconds(58.0),
        };
        Assert.Empty(Evening.Of(evening.Request with { Subs = [shorter] }).Cautions);
        Assert.Empty(
            Evening.Of(evening.Request with { PolarError = Angle.FromArcminutes(4.8) }).Cautions
        );
    }

    [Fact]
    public void Cautions_OfFinePixelsAndACoarseGuider_SaySo()
    {
        var evening = Evening.Of(
            Usual with
            {
                Rig = new(2000.0, new(4144, 2822, 4.63)),
                PolarError = Angle.Zero,
                Battery = null,
            }
        );
        Assert.Equal(2, evening.Cautions.Count);
        Assert.Contains("Binning 3 × 3", evening.Cautions[0], StringComparison.Ordinal);
        Assert.Contains("13.5 image pixels", evening.Cautions[1], StringComparison.Ordinal);
        Assert.Null(evening.Trailing.Guided.Longest);
    }

    [Fact]
    public void Cautions_NearTheSun_AlwaysComeFirst()
    {
        // Antares stands 4.6° from the Sun on 1 December.
        var antares = SkyDirection.FromDegrees(247.35, -26.43);
        var caution = Evening
            .Of(Usual with { Panels = [antares], Evening = new(2026, 12, 1) })
            .Cautions[0];
        Assert.StartsWith("The Sun stands 5° from a panel", caution, StringComparison.Ordinal);

        // And between two panels on either side of it.
        var east = SkyDirection.FromDegrees(280.0, -23.0);
        var west = SkyDirection.FromDegrees(215.0, -14.0);
        var between = Evening.Of(Usual with { Panels = [east, west], Evening = new(2026, 12, 1) });
        Assert.InRange(between.NearestSun.Degrees, 0.0, 5.0);
    }

    [Fact]
    public void Of_AnEveningWithoutNight_HasNoSubs()
    {
        var north = new ObservingSite(
            Angle.FromDegrees(69.7),
            Angle.Zero,
            0.0,
            AirConditions.Usual
        );
        var evening = Evening.Of(Usual with { Site = north, Evening = new(2026, 6, 21) });
        Assert.Empty(evening.Dark!.Stretches);
        Assert.Equal(0, evening.Sums.InTheNight);
        Assert.Equal(TimeSpan.FromMinutes(75.0), evening.Session.Length);
        Assert.Null(evening.Trailing.Lowest);
    }

    [Fact]
    public void Of_APlanWithoutSite_ReckonsWithTheWishedTime()
    {
        var evening = Evening.Of(Usual with { Site = null });
        Assert.Null(evening.Dark);
        Assert.Null(evening.Sums.InTheNight);
        Assert.Equal(100, evening.Sums.Wanted);
        Assert.Equal(
            (100 * (184.0 + (25.0 / 3.0))) + 600.0 + (75.0 * 60.0),
            evening.Session.Length.TotalSeconds,
            0.01
        );
        Assert.Equal(
            13.25,
            Evening
                .Of(Usual with { Site = null, GoalPerPanel = TimeSpan.FromHours(900.0) })
                .Session.Length.TotalHours,
            1e-9
        );
    }

    [Fact]
    public void Of_WishesBeyondAllMeasure_StaysFinite()
    {
        var endless = Usual with
        {
            GoalPerPanel = TimeSpan.FromHours(1000.0),
            ExpectedLoss = 0.999,
            Subs = [Usual.Subs[0] with { Sub = TimeSpan.FromSeconds(0.001) }],
        };
        var evening = Evening.Of(endless);
        Assert.True(evening.Sums.InTheNight < 20_000);
        Assert.True(evening.Sums.Wanted > 1_000_000_000_000L);
        Assert.True(double.IsFinite(Evening.Of(endless with { Site = null }).Sums.Bytes));
    }

    [Fact]
    public void Of_NoPanel_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Evening.Of(Usual with { Panels = [] }));
}
