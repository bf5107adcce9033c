using Framing.Mosaics;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Reads the tables that say what is wanted: target, rotation, mosaic, night, sky.</summary>
internal static class SkySections
{
    private static readonly string[] BoxKeys = ["size_arcmin", "angle_deg"];
    private static readonly string[] Sources = ["names", "centre", "outline"];

    public static TargetSection Target(PlanReading reading, PlanTable table)
    {
        var names = Names(table);
        var box = Box(table);
        SkyOutline? outline = null;
        PlanFileError? error = null;
        if (reading.Csv(table, "outline") is { } csv)
        {
            outline = OutlineReader.Read(csv.Path, csv.Text, out error);
        }

        if (error is not null)
        {
            reading.Notes.Add(error);
        }

        ExactlyOne(table);
        var target = new TargetSection
        {
            Names = names,
            Outline = box is null
                ? outline
                : SkyOutline.Rectangle(box.Centre, box.Long, box.Short, box.AlongLong),
            Box = box,
            Margin = table.Number("margin_arcmin", new("minutes of arc", 0.0, 600.0)) is { } margin
                ? Angle.FromArcminutes(margin)
                : PlanDefaults.Margin,
        };
        table.Close();
        return target;
    }

    public static RotationSection Rotation(PlanTable table)
    {
        var strategy =
            table.TextIn(
                "strategy",
                "give the name of a strategy in quotes, such as \"to-outline\" or \"keep-camera-angle\" (\"framing strategies\" lists them); an angle stands in camera_angle_deg"
            ) ?? PlanDefaults.RotationStrategy;
        PositionAngle? angle = table.Number("camera_angle_deg", new("degrees", -360.0, 360.0))
            is { } degrees
            ? PositionAngle.FromDegrees(degrees)
            : null;
        var sigma = table.Number("camera_angle_sigma_deg", new("degrees", 0.0, 45.0)) is { } spread
            ? Angle.FromDegrees(spread)
            : PlanDefaults.CameraAngleSigma;
        return new(new(strategy, table.Rest()), angle, sigma);
    }

    public static MosaicSection Mosaic(PlanTable table)
    {
        var overlap =
            table.TextIn(
                "overlap",
                "give the name of a strategy in quotes, with its setting beside it: \"fraction\" (overlap_fraction = 0.15), \"arcminutes\" (overlap_arcmin = 30), \"for-pointing\" or \"for-registration\" (\"framing strategies\" lists them)"
            ) ?? PlanDefaults.OverlapStrategy;
        var chance = table.Number(
            "chance_no_gap",
            new("a chance", 0.0, 1.0, LeastAllowed: false, MostAllowed: false),
            PlanDefaults.ChanceNoGap
        );
        var most = table.Whole(
            "most_panels",
            new("a whole number", 1.0, 10_000.0),
            PlanDefaults.MostPanels
        );
        var grid = Grid(table);
        var turn = table.Flag("turn_camera_at_each_panel", otherwise: false);
        var shared = table.Number(
            "shared_errors",
            new("a share", 0.0, 1.0),
            PlanDefaults.SharedErrors
        );
        var centre = Centre(table);
        return new(new(overlap, table.Rest()), chance, grid, most, turn, shared, centre);
    }

    public static NightSection Night(PlanTable table)
    {
        var usual = PlanDefaults.Night;
        var trail = table.Number(
            "trail_limit_px",
            NumberRange.Above("pixels", 0.0, 100.0),
            usual.TrailLimitPx
        );
        var night = new NightSection
        {
            Date = Date(table),
            Nights = table.Whole("nights", new("a whole number", 1.0, 60.0), usual.Nights),
            Darkness = (Darkness)
                table.Choice("darkness", (int)usual.Darkness, "astronomical", "nautical", "civil"),
            GoalPerPanel = table.Number("goal_h_per_panel", NumberRange.Above("hours", 0.0, 1000.0))
                is { } hours
                ? TimeSpan.FromHours(hours)
                : usual.GoalPerPanel,
            Setup = EquipmentSections.Minutes(table, "setup_min", 720.0, usual.Setup),
            Repoint = EquipmentSections.Minutes(table, "repoint_min", 240.0, usual.Repoint),
            FocusEvery = table.Number("focus_every_min", NumberRange.Above("minutes", 0.0, 1440.0))
                is { } focus
                ? TimeSpan.FromMinutes(focus)
                : usual.FocusEvery,
            Focus = EquipmentSections.Minutes(table, "focus_min", 60.0, usual.Focus),
            Flats = EquipmentSections.Minutes(table, "flats_min", 240.0, usual.Flats),
            ExpectedLoss = table.Number(
                "expected_loss",
                new("a share", 0.0, 1.0, MostAllowed: false),
                usual.ExpectedLoss
            ),
            Dither = table.Number("dither_arcsec", new("seconds of arc", 0.0, 3600.0)) is { } dither
                ? Angle.FromArcseconds(dither)
                : usual.Dither,
            TrailLimitPx = trail,
            Filters = Filters(table, trail),
        };
        table.Close();
        return night;
    }

    public static SkySection Sky(PlanTable table)
    {
        var usual = PlanDefaults.Sky;
        var sky = new SkySection(
            table.Number("seeing_arcsec", NumberRange.Above("seconds of arc", 0.0, 60.0))
                is { } seeing
                ? Angle.FromArcseconds(seeing)
                : usual.Seeing,
            table.Number(
                "sky_mag_arcsec2",
                new("magnitudes per square arcsecond", 10.0, 23.0),
                usual.MagnitudePerArcsec2
            )
        );
        table.Close();
        return sky;
    }

    private static List<string> Names(PlanTable table)
    {
        const string Wanted = "give names of objects in quotes: [\"IC 1805\", \"IC 1848\"]";
        var value = table.Find("names");
        if (value is null)
        {
            return [];
        }

        IReadOnlyList<TomlValue> items = value.Kind == TomlKind.List ? value.Items : [value];
        table.PlaceItems("names", value);
        if (items.Count is 0 or > 50 || items.Any(item => item.Kind != TomlKind.Text))
        {
            table.Wrong("names", value, Wanted);
            return [];
        }

        var names = new List<string>();
        foreach (var item in items)
        {
            if (table.Text("names", item, out var name))
            {
                names.Add(name);
            }
        }

        return names;
    }

    private static TargetBox? Box(PlanTable table)
    {
        const string SizeWanted =
            "give the long and the short side, minutes of arc, more than 0 and less than 7200, the long one first: [260, 120]";
        var centre = Centre(table);
        if (table.Has("centre") && !table.Has("size_arcmin"))
        {
            table.Missing("size_arcmin", SizeWanted["give ".Length..]);
        }

        var size = table.Numbers(
            "size_arcmin",
            2,
            new("minutes of arc", 0.0, 7200.0, LeastAllowed: false, MostAllowed: false),
            SizeWanted
        );
        if (size is not null && size[0] < size[1])
        {
            table.Wrong("size_arcmin", table.Find("size_arcmin")!, SizeWanted);
            size = null;
        }

        var angle = table.Number("angle_deg", new("degrees", -360.0, 360.0)) is { } degrees
            ? PositionAngle.FromDegrees(degrees)
            : PlanDefaults.TargetAngle;
        if (!table.Has("centre"))
        {
            foreach (var key in BoxKeys.Where(table.Has))
            {
                table.Wrong(
                    key,
                    table.Find(key)!,
                    "this goes with centre = \"…\" alone; names and outlines have their own size"
                );
            }
        }

        return centre is { } middle && size is not null
            ? new(middle, Angle.FromArcminutes(size[0]), Angle.FromArcminutes(size[1]), angle)
            : null;
    }

    private static SkyDirection? Centre(PlanTable table)
    {
        var value = table.Find("centre");
        if (value is null || !table.Text("centre", value, out var text))
        {
            return null;
        }

        var reading = CoordinateReader.ReadDirection(text);
        if (reading.TryGet(out var centre, out var error))
        {
            return centre;
        }

        table.Wrong("centre", value, error);
        return null;
    }

    private static void ExactlyOne(PlanTable table)
    {
        var given = Sources.Where(table.Has).ToList();
        if (given.Count == 0)
        {
            table.Missing(
                "names",
                "names = [\"…\"], or centre and size_arcmin, or outline = \"file.csv\""
            );
        }

        foreach (var key in given.Skip(1))
        {
            table.Wrong(
                key,
                table.Find(key)!,
                $"the target is given by {given[0]} already; keep one of {Words.Joined(Sources, "and")}"
            );
        }
    }

    private static GridWish Grid(PlanTable table)
    {
        const string Wanted =
            "give \"fewest\", \"adapted\" (panels in bands that follow the outline), or columns and rows, whole numbers from 1 to 1000: [3, 2]";
        switch (table.Find("grid"))
        {
            case null:
                return PlanDefaults.Grid;
            case { Kind: TomlKind.Text, Content: "fewest" }:
                return GridWish.Fewest;
            case { Kind: TomlKind.Text, Content: "adapted" }:
                return GridWish.Adapted;
            case {
                Items: [
                    { Content: long and >= 1 and <= 1000 } columns,
                    { Content: long and >= 1 and <= 1000 } rows,
                ]
            }:
                return GridWish.Fixed((int)(long)columns.Content!, (int)(long)rows.Content!);
            case var value:
                table.Wrong("grid", value, Wanted);
                return PlanDefaults.Grid;
        }
    }

    private static DateOnly? Date(PlanTable table)
    {
        var value = table.Find("date");
        if (value is null)
        {
            return null;
        }

        if (value is { Kind: TomlKind.Date, Content: DateOnly { Year: >= 1900 and <= 2100 } date })
        {
            return date;
        }

        table.Wrong(
            "date",
            value,
            "give the evening's date without quotes or time, from 1900 to 2100, such as 2026-12-05"
        );
        return null;
    }

    private static List<FilterSection> Filters(PlanTable night, double trail)
    {
        var filters = new List<FilterSection>();
        foreach (var table in night.Tables("filter"))
        {
            var name = table.TextNeeded("name", "the filter's name in quotes");
            if (
                filters.Exists(other =>
                    string.Equals(other.Name, name, StringComparison.OrdinalIgnoreCase)
                )
            )
            {
                table.Wrong(
                    "name",
                    table.Find("name")!,
                    "two filters have this name; give each its own"
                );
            }

            filters.Add(
                new(
                    name,
                    TimeSpan.FromSeconds(
                        table.NumberNeeded("sub_s", NumberRange.Above("seconds", 0.0, 7200.0))
                    ),
                    Seconds(table, "readout_s", PlanDefaults.Readout),
                    table.Whole(
                        "dither_every",
                        new("a whole number of subs", 0.0, 1000.0),
                        PlanDefaults.DitherEvery
                    ),
                    Seconds(table, "dither_s", PlanDefaults.DitherTime),
                    table.Number(
                        "share",
                        NumberRange.Above("a share", 0.0, 1000.0),
                        PlanDefaults.Share
                    ),
                    table.Number("trail_limit_px", NumberRange.Above("pixels", 0.0, 100.0), trail),
                    Moon(table)
                )
            );
            table.Close();
        }

        return filters;
    }

    private static MoonRule Moon(PlanTable filter)
    {
        var away = filter.Number("moon_away_deg", new("degrees", 0.0, 180.0), 0.0);
        var lit = filter.Number("moon_lit_from", new("a part of the disc", 0.0, 1.0), 0.0);
        if (filter.Has("moon_lit_from") && !filter.Has("moon_away_deg"))
        {
            filter.Missing(
                "moon_away_deg",
                "how far from the Moon the filter has to be while so much of it is lit: moon_away_deg = 60"
            );
        }

        return new(Angle.FromDegrees(away), lit);
    }

    private static TimeSpan Seconds(PlanTable table, string key, TimeSpan otherwise) =>
        table.Number(key, new("seconds", 0.0, 600.0)) is { } seconds
            ? TimeSpan.FromSeconds(seconds)
            : otherwise;
}
