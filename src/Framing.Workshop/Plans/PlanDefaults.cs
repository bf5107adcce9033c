using Framing.Mosaics;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What a plan file means when it leaves a key out. This is the only place where such values stand.</summary>
/// <remarks>Where no source is named, the value is common practice.</remarks>
public static class PlanDefaults
{
    /// <summary>Pixels joined along each axis.</summary>
    public const int Binning = 1;

    /// <summary>Where the guide star stands: the worst case.</summary>
    public const GuideStar GuideStar = Framing.Nights.GuideStar.Corner;

    /// <summary>Height of the site above the sea in m.</summary>
    public const double ElevationMetres = 0.0;

    /// <summary>Time zone of the site: universal time, since a program that guessed the machine's would plan differently elsewhere.</summary>
    public const string TimeZone = "UTC";

    /// <summary>The strategy for the camera angle.</summary>
    public const string RotationStrategy = "to-outline";

    /// <summary>The strategy for the overlap.</summary>
    public const string OverlapStrategy = "fraction";

    /// <summary>How sure the plan has to be that no gap opens between panels.</summary>
    public const double ChanceNoGap = 0.99;

    /// <summary>How much of the errors all panels have in common: none, the careful assumption.</summary>
    public const double SharedErrors = 0.0;

    /// <summary>The most panels a plan may have.</summary>
    public const int MostPanels = 100;

    /// <summary>How many nights are planned.</summary>
    public const int Nights = 1;

    /// <summary>What share of the subs is expected to be lost to cloud, wind and satellites.</summary>
    public const double ExpectedLoss = 0.2;

    /// <summary>How far a star may trail in a sub, in (binned) pixels.</summary>
    public const double TrailLimitPx = 1.0;

    /// <summary>Subs between two dithers.</summary>
    public const int DitherEvery = 3;

    /// <summary>Brightness of the sky in magnitudes per square arcsecond: the edge of the countryside.</summary>
    public const double SkyMagnitudePerArcsec2 = 21.0;

    /// <summary>What share of the time a load draws its power.</summary>
    public const double Duty = 1.0;

    /// <summary>What share of a battery's usable part is kept for packing up and starting the car.</summary>
    public const double SpareFraction = 0.2;

    /// <summary>Added to a bearing of the horizon file to make it true.</summary>
    public static Angle HorizonAzimuthOffset => Angle.Zero;

    /// <summary>Below this the air dims and blurs too much.</summary>
    public static Angle MinAltitude => Angle.FromDegrees(25.0);

    /// <summary>Sky kept around the target beyond what dithering needs.</summary>
    public static Angle Margin => Angle.FromArcminutes(5.0);

    /// <summary>Position angle of the long side of a target given by centre and size.</summary>
    public static PositionAngle TargetAngle => PositionAngle.North;

    /// <summary>How well a camera angle can be set and read (one standard deviation).</summary>
    public static Angle CameraAngleSigma => Angle.FromDegrees(1.0);

    /// <summary>As few panels as hold the target.</summary>
    public static GridWish Grid => GridWish.Fewest;

    /// <summary>The mount: an arm on a wedge, its pointing checked with a test frame at each panel.</summary>
    public static MountSection Mount { get; } =
        new()
        {
            Type = MountType.Wedge,
            MeridianPause = TimeSpan.Zero,
            DeclinationLimit = Angle.FromDegrees(90.0),
            GotoFrame = GotoFrame.OfDate,
            EntryFormat = EntryFormat.HmsDms,
            DateOrder = DateOrder.YearMonthDay,
            GotoSigma = Angle.FromArcminutes(20.0),
            CentredSigma = Angle.FromArcminutes(3.0),
            CheckEachPanel = true,
            PolarError = Angle.FromArcminutes(15.0),
            BacklashRightAscension = Angle.FromArcminutes(3.0),
            BacklashDeclination = Angle.FromArcminutes(3.0),
            RateFactorRightAscension = 1.0,
            RateFactorDeclination = 1.0,
            ZenithLimit = Angle.Zero,
            FinishRightAscension = MountDirection.West,
            FinishDeclination = MountDirection.North,
            KeyAddsToTracking = true,
            DialZero = null,
            Speeds = [new("1", 1.0), new("2", 5.0), new("3", 20.0), new("4", 60.0)],
            Keys = new("east", "west", "north", "south"),
        };

    /// <summary>The night: one, astronomically dark, with the pauses of somebody who does everything by hand.</summary>
    public static NightSection Night { get; } =
        new()
        {
            Date = null,
            Nights = Nights,
            Darkness = Darkness.Astronomical,
            GoalPerPanel = TimeSpan.FromHours(2.0),
            Setup = TimeSpan.FromMinutes(60.0),
            Repoint = TimeSpan.FromMinutes(10.0),
            FocusEvery = TimeSpan.FromMinutes(60.0),
            Focus = TimeSpan.FromMinutes(3.0),
            Flats = TimeSpan.FromMinutes(15.0),
            ExpectedLoss = ExpectedLoss,
            Dither = Angle.FromArcseconds(20.0),
            TrailLimitPx = TrailLimitPx,
            Filters = [],
        };

    /// <summary>Time to read out a frame.</summary>
    public static TimeSpan Readout => TimeSpan.FromSeconds(4.0);

    /// <summary>Time for a dither to settle.</summary>
    public static TimeSpan DitherTime => TimeSpan.FromSeconds(25.0);

    /// <summary>A filter's share of the goal, against the other filters.</summary>
    public static double Share => 1.0;

    /// <summary>The sky: ordinary seeing at the edge of the countryside.</summary>
    public static SkySection Sky { get; } = new(Angle.FromArcseconds(3.0), SkyMagnitudePerArcsec2);

    /// <summary>Air pressure at a height above the sea.</summary>
    /// <param name="elevationMetres">Height in m.</param>
    /// <returns>hPa: 1013.25 (1 - 0.0065 h / 288.15)^5.25588.</returns>
    /// <remarks>ISO 2533:1975, the standard atmosphere below 11 km.</remarks>
    public static double PressureHectopascals(double elevationMetres) =>
        1013.25 * Math.Pow(1.0 - (0.0065 * elevationMetres / 288.15), 5.25588);

    /// <summary>Air temperature at a height above the sea.</summary>
    /// <param name="elevationMetres">Height in m.</param>
    /// <returns>°C: 15 - 0.0065 h.</returns>
    /// <remarks>ISO 2533:1975, the standard atmosphere below 11 km.</remarks>
    public static double TemperatureCelsius(double elevationMetres) =>
        15.0 - (0.0065 * elevationMetres);
}
