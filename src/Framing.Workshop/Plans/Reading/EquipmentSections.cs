using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Reads the tables that describe what stands on the meadow: rig, guide camera, site, mount, power.</summary>
internal static class EquipmentSections
{
    private static readonly NumberRange Millimetres = NumberRange.Above(
        "millimetres",
        0.0,
        100_000.0
    );
    private static readonly NumberRange Micrometres = NumberRange.Above("micrometres", 0.0, 1000.0);
    private static readonly NumberRange WideArcminutes = new("minutes of arc", 0.0, 600.0);
    private static readonly string PixelWords = FormattableString.Invariant(
        $"give columns and rows, whole numbers from 1 to {Sensor.MostPixels}, such as [4144, 2822]"
    );

    public static Rig Rig(PlanTable table)
    {
        var focal = table.NumberNeeded("focal_length_mm", Millimetres);
        var pixel = table.NumberNeeded("pixel_um", Micrometres);
        if (!table.Has("sensor_px"))
        {
            table.Missing("sensor_px", PixelWords["give ".Length..]);
        }

        var size = table.Numbers("sensor_px", 2, new("pixels", 1.0, Sensor.MostPixels), PixelWords);
        if (size is not null && (size[0] != Math.Floor(size[0]) || size[1] != Math.Floor(size[1])))
        {
            table.Wrong("sensor_px", table.Find("sensor_px")!, PixelWords);
            size = null;
        }

        size ??= [1000.0, 1000.0];
        var binning = table.Whole(
            "binning",
            new("a whole number of pixels", 1.0, Math.Min(16.0, Math.Min(size[0], size[1]))),
            PlanDefaults.Binning
        );
        var mirrored = table.Flag("mirrored", otherwise: false);
        table.Close();
        return new(focal, new((int)size[0], (int)size[1], pixel), binning, mirrored);
    }

    public static GuideSection Guide(PlanTable table)
    {
        var guide = new GuideSection(
            table.NumberNeeded("focal_length_mm", Millimetres),
            table.NumberNeeded("pixel_um", Micrometres),
            (GuideStar)table.Choice("star", (int)PlanDefaults.GuideStar, "centre", "corner")
        );
        table.Close();
        return guide;
    }

    public static SiteSection Site(PlanReading reading, PlanTable table)
    {
        var elevation = table.Number(
            "elevation_m",
            new("metres", -500.0, 9000.0),
            PlanDefaults.ElevationMetres
        );
        var offset = table.Number("horizon_azimuth_offset_deg", new("degrees", -360.0, 360.0))
            is { } degrees
            ? Angle.FromDegrees(degrees)
            : PlanDefaults.HorizonAzimuthOffset;
        var site = new SiteSection
        {
            Latitude = Angle.FromDegrees(
                table.NumberNeeded("latitude_deg", new("degrees (north positive)", -90.0, 90.0))
            ),
            Longitude = Angle.FromDegrees(
                table.NumberNeeded("longitude_deg", new("degrees (east positive)", -180.0, 180.0))
            ),
            ElevationMetres = elevation,
            TimeZone = TimeZone(table),
            Horizon = Horizon(reading, table, offset),
            MinAltitude = Degrees(
                table,
                "min_altitude_deg",
                new("degrees", 0.0, 90.0, MostAllowed: false),
                PlanDefaults.MinAltitude
            ),
            PressureHectopascals = table.Number(
                "pressure_hpa",
                new("hectopascals", 200.0, 1100.0),
                PlanDefaults.PressureHectopascals(elevation)
            ),
            TemperatureCelsius = table.Number(
                "temperature_c",
                new("degrees Celsius", -80.0, 60.0),
                PlanDefaults.TemperatureCelsius(elevation)
            ),
        };
        table.Close();
        return site;
    }

    public static MountSection Mount(PlanTable table)
    {
        var usual = PlanDefaults.Mount;
        var backlash = table.Numbers(
            "backlash_arcmin",
            2,
            WideArcminutes,
            "give right ascension and declination, minutes of arc from 0 to 600, such as [3, 3]"
        );
        var rates = table.Numbers(
            "rate_factor",
            2,
            new("factors", 0.2, 5.0),
            "give right ascension and declination, true rate over what the labels promise, such as [1.0, 0.97]"
        );
        var finish = Finish(table, usual);
        var mount = new MountSection
        {
            Type = (MountType)table.Choice("type", (int)usual.Type, "wedge", "german"),
            MeridianPause = Minutes(table, "meridian_pause_min", 240.0, usual.MeridianPause),
            DeclinationLimit = Degrees(
                table,
                "declination_limit_deg",
                NumberRange.Above("degrees", 0.0, 90.0),
                usual.DeclinationLimit
            ),
            GotoFrame = (GotoFrame)
                table.Choice("goto_frame", (int)usual.GotoFrame, "of-date", "J2000"),
            EntryFormat = (EntryFormat)
                table.Choice(
                    "entry_format",
                    (int)usual.EntryFormat,
                    "hms-dms",
                    "hm.m-dm",
                    "degrees"
                ),
            DateOrder = (DateOrder)
                table.Choice(
                    "date_order",
                    (int)usual.DateOrder,
                    "year-month-day",
                    "month-day-year",
                    "day-month-year"
                ),
            GotoSigma = Arcminutes(table, "goto_sigma_arcmin", usual.GotoSigma),
            CentredSigma = Arcminutes(table, "centred_sigma_arcmin", usual.CentredSigma),
            CheckEachPanel = table.Flag("check_each_panel", usual.CheckEachPanel),
            PolarError = Arcminutes(table, "polar_error_arcmin", usual.PolarError),
            BacklashRightAscension = backlash is null
                ? usual.BacklashRightAscension
                : Angle.FromArcminutes(backlash[0]),
            BacklashDeclination = backlash is null
                ? usual.BacklashDeclination
                : Angle.FromArcminutes(backlash[1]),
            RateFactorRightAscension = rates?[0] ?? usual.RateFactorRightAscension,
            RateFactorDeclination = rates?[1] ?? usual.RateFactorDeclination,
            ZenithLimit = Degrees(
                table,
                "zenith_limit_deg",
                new("degrees", 0.0, 90.0, MostAllowed: false),
                usual.ZenithLimit
            ),
            FinishRightAscension = finish.RightAscension,
            FinishDeclination = finish.Declination,
            KeyAddsToTracking = table.Flag("key_adds_to_tracking", usual.KeyAddsToTracking),
            DialZero = table.Number("dial_zero_deg", new("degrees", -360.0, 360.0)) is { } dial
                ? Angle.FromDegrees(dial)
                : null,
            Speeds = Speeds(table, usual),
            Keys = Keys(table, usual),
        };
        table.Close();
        return mount;
    }

    public static PowerSection Power(PlanTable table)
    {
        var battery = table.NumberNeeded(
            "battery_wh",
            NumberRange.Above("watt hours", 0.0, 100_000.0)
        );
        var chemistry = (BatteryChemistry)
            table.Choice(
                "chemistry",
                (int)BatteryChemistry.LithiumIronPhosphate,
                "LiFePO4",
                "Li-ion",
                "lead-acid"
            );
        var usable = table.Number(
            "usable_fraction",
            NumberRange.Above("a share", 0.0, 1.0),
            Battery.UsualUsable(chemistry)
        );
        var spare = table.Number(
            "spare_fraction",
            new("a share", 0.0, 1.0, MostAllowed: false),
            PlanDefaults.SpareFraction
        );
        if (!table.Has("loads"))
        {
            table.Missing(
                "loads",
                "what hangs on the battery: [ { name = \"camera\", w = 24 }, … ]"
            );
        }

        var loads = new List<PowerLoad>();
        foreach (var load in table.Tables("loads"))
        {
            loads.Add(
                new(
                    load.TextNeeded("name", "what it is, in quotes"),
                    load.NumberNeeded("w", new("watts", 0.0, 10_000.0)),
                    load.Number("duty", new("a share", 0.0, 1.0), PlanDefaults.Duty)
                )
            );
            load.Close();
        }

        table.Close();
        return new(battery, chemistry, usable, spare, loads);
    }

    internal static TimeSpan Minutes(
        PlanTable table,
        string key,
        double most,
        TimeSpan otherwise
    ) =>
        table.Number(key, new("minutes", 0.0, most)) is { } minutes
            ? TimeSpan.FromMinutes(minutes)
            : otherwise;

    private static Angle Degrees(PlanTable table, string key, NumberRange range, Angle otherwise) =>
        table.Number(key, range) is { } degrees ? Angle.FromDegrees(degrees) : otherwise;

    private static Angle Arcminutes(PlanTable table, string key, Angle otherwise) =>
        table.Number(key, WideArcminutes) is { } minutes
            ? Angle.FromArcminutes(minutes)
            : otherwise;

    private static string TimeZone(PlanTable table)
    {
        var name = table.Text("time_zone", 60);
        if (name is not null && SiteClock.Find(name) is null)
        {
            table.Wrong(
                "time_zone",
                table.Find("time_zone")!,
                NearestName.Among(name, SiteClock.ZoneNames) is { } near
                    ? $"there is no such time zone; did you mean \"{near}\"?"
                    : "there is no such time zone; give its name, such as \"Europe/Zurich\", or \"UTC\""
            );
            return PlanDefaults.TimeZone;
        }

        return name ?? PlanDefaults.TimeZone;
    }

    private static Horizon Horizon(PlanReading reading, PlanTable table, Angle offset)
    {
        if (reading.Csv(table, "horizon") is not { } csv)
        {
            return Nights.Horizon.Flat;
        }

        var horizon = HorizonReader.Read(csv.Path, csv.Text, offset, out var error);
        if (error is not null)
        {
            reading.Notes.Add(error);
        }

        return horizon;
    }

    private static (MountDirection RightAscension, MountDirection Declination) Finish(
        PlanTable table,
        MountSection usual
    )
    {
        var value = table.Find("finish");
        switch (value?.Items)
        {
            case null:
                return (usual.FinishRightAscension, usual.FinishDeclination);
            case [{ Content: "east" or "west" } ra, { Content: "north" or "south" } dec]:
                return (
                    ra.Content is "east" ? MountDirection.East : MountDirection.West,
                    dec.Content is "north" ? MountDirection.North : MountDirection.South
                );
            default:
                table.Wrong(
                    "finish",
                    value,
                    "give the sides from which moves end: [\"east\" or \"west\", \"north\" or \"south\"]"
                );
                return (usual.FinishRightAscension, usual.FinishDeclination);
        }
    }

    private static IReadOnlyList<MountSpeed> Speeds(PlanTable table, MountSection usual)
    {
        var speeds = new List<MountSpeed>();
        foreach (var speed in table.Tables("speeds"))
        {
            var label = speed.TextNeeded("label", "what the hand control calls it, in quotes");
            if (speeds.Exists(other => string.Equals(other.Label, label, StringComparison.Ordinal)))
            {
                speed.Wrong(
                    "label",
                    speed.Find("label")!,
                    "two speeds have this label; give each its own"
                );
            }

            speeds.Add(
                new(
                    label,
                    speed.NumberNeeded(
                        "x_sidereal",
                        NumberRange.Above("multiples of the sidereal rate", 0.0, 10_000.0)
                    )
                )
            );
            speed.Close();
        }

        speeds.Sort((slow, fast) => slow.Sidereal.CompareTo(fast.Sidereal));
        return speeds.Count > 0 ? speeds : usual.Speeds;
    }

    private static MountKeys Keys(PlanTable table, MountSection usual)
    {
        if (table.Table("keys") is not { } keys)
        {
            return usual.Keys;
        }

        var named = new MountKeys(
            keys.Text("east", 20) ?? usual.Keys.East,
            keys.Text("west", 20) ?? usual.Keys.West,
            keys.Text("north", 20) ?? usual.Keys.North,
            keys.Text("south", 20) ?? usual.Keys.South
        );
        keys.Close();
        return named;
    }
}
