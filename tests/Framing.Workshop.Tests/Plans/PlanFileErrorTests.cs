namespace Framing.Workshop.Tests;

/// <summary>What is printed when a plan is wrong: one line with place, key, value and what would be right.</summary>
public sealed class PlanFileErrorTests
{
    // The first lines of a plan with one line changed; the whole message is asserted.
    [Theory]
    [InlineData(
        "focal_length_mm = 250",
        "focal_length_mm = 0",
        "plan.toml:2:19: rig.focal_length_mm = 0; give millimetres, more than 0 and at most 100000"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "focal_length_mm = nan",
        "plan.toml:2:19: rig.focal_length_mm = nan; give millimetres, more than 0 and at most 100000"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "focal_length_mm = -inf",
        "plan.toml:2:19: rig.focal_length_mm = -inf; give millimetres, more than 0 and at most 100000"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "focal_length_mm = \"300mm\"",
        "plan.toml:2:19: rig.focal_length_mm = \"300mm\"; give a plain number without quotes or unit: millimetres, more than 0 and at most 100000"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "focal_length_mm = 300mm",
        "plan.toml:2:22: \"focal_length_mm = 300mm\" is no TOML; a number stands alone without its unit, a text in \"double quotes\", and each line holds one key"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "focal_length_mm = 1e400",
        "plan.toml:2:19: rig.focal_length_mm = 1e400; give millimetres, more than 0 and at most 100000"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "focal_lenght_mm = 250",
        "plan.toml:2:1: rig.focal_lenght_mm is not known in [rig]; did you mean focal_length_mm?"
    )]
    [InlineData(
        "focal_length_mm = 250",
        "",
        "plan.toml:1:1: rig.focal_length_mm is missing; give millimetres, more than 0 and at most 100000"
    )]
    [InlineData(
        "sensor_px = [4144, 2822]",
        "sensor_px = [0, 2822]",
        "plan.toml:3:13: rig.sensor_px = [0, 2822]; give columns and rows, whole numbers from 1 to 100000, such as [4144, 2822]"
    )]
    [InlineData(
        "sensor_px = [4144, 2822]",
        "sensor_px = [4144.5, 2822]",
        "plan.toml:3:13: rig.sensor_px = [4144.5, 2822]; give columns and rows, whole numbers from 1 to 100000, such as [4144, 2822]"
    )]
    [InlineData(
        "sensor_px = [4144, 2822]",
        "sensor_px = 4144",
        "plan.toml:3:13: rig.sensor_px = 4144; give columns and rows, whole numbers from 1 to 100000, such as [4144, 2822]"
    )]
    [InlineData(
        "sensor_px = [4144, 2822]",
        "sensor_px = [4144, 2822, 3]",
        "plan.toml:3:13: rig.sensor_px = [4144, 2822, 3]; give columns and rows, whole numbers from 1 to 100000, such as [4144, 2822]"
    )]
    [InlineData(
        "sensor_px = [4144, 2822]",
        "",
        "plan.toml:1:1: rig.sensor_px is missing; give columns and rows, whole numbers from 1 to 100000, such as [4144, 2822]"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4,63",
        "plan.toml:4:13: \"pixel_um = 4,63\" is no TOML; a number has a decimal point, no comma"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\ncolour = true",
        "plan.toml:5:1: rig.colour is not known in [rig]; there are focal_length_mm, pixel_um, sensor_px, binning and mirrored"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\nstrategy = \"north-up\"",
        "plan.toml:5:1: rig.strategy is not known in [rig]; it belongs in [rotation]"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\npixel_um = 4.63",
        "plan.toml:5:1: rig.pixel_um is given twice, first in line 4; keep one"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\nbinning = 0",
        "plan.toml:5:11: rig.binning = 0; give a whole number of pixels from 1 to 16"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\nbinning = 1.5",
        "plan.toml:5:11: rig.binning = 1.5; give a whole number of pixels from 1 to 16"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\nmirrored = True",
        "plan.toml:5:12: \"mirrored = True\" is no TOML; true and false are written in small letters"
    )]
    [InlineData(
        "pixel_um = 4.63",
        "pixel_um = 4.63\nmirrored = \"no\"",
        "plan.toml:5:12: rig.mirrored = \"no\"; give true or false (small letters, no quotes)"
    )]
    [InlineData(
        "[rig]",
        "rig = 5",
        "plan.toml:1:7: rig = 5; give a table: [rig] on a line, its keys below, or the name of a file in quotes (and 3 more)"
    )]
    [InlineData(
        "[rig]",
        "[[rig]]",
        "plan.toml:1:1: rig = [[rig]]; give one table: [rig] with one pair of brackets"
    )]
    [InlineData(
        "[rig]",
        "rig = \"none.toml\"\n[guide]",
        "plan.toml:1:7: rig = \"none.toml\"; there is no such file: none.toml (and 1 more)"
    )]
    [InlineData(
        "[rig]",
        "[rigg]",
        "plan.toml:1:1: rigg is not known at the top of the file; did you mean rig?"
    )]
    [InlineData(
        "[target]",
        "[targets]",
        "plan.toml:6:1: targets is not known at the top of the file; did you mean target?"
    )]
    [InlineData(
        "[target]",
        "[target]\ncentre = \"2h 41m, +91\"\nsize_arcmin = [1, 1]",
        "plan.toml:7:10: target.centre = \"2h 41m, +91\"; declination \"+91\": it is beyond the pole; it runs from -90 to +90 degrees (and 1 more)"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "centre = \"2h 41m, +91\"\nsize_arcmin = [260, 120]",
        "plan.toml:7:10: target.centre = \"2h 41m, +91\"; declination \"+91\": it is beyond the pole; it runs from -90 to +90 degrees"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "centre = 5\nsize_arcmin = [260, 120]",
        "plan.toml:7:10: target.centre = 5; give a text in \"double quotes\""
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "centre = \"2h 41m, +61\"",
        "plan.toml:6:1: target.size_arcmin is missing; give the long and the short side, minutes of arc, more than 0 and less than 7200, the long one first: [260, 120]"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "centre = \"2h 41m, +61\"\nsize_arcmin = [120, 260]",
        "plan.toml:8:15: target.size_arcmin = [120, 260]; give the long and the short side, minutes of arc, more than 0 and less than 7200, the long one first: [260, 120]"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "size_arcmin = [260, 120]",
        "plan.toml:6:1: target.names is missing; give names = [\"…\"], or centre and size_arcmin, or outline = \"file.csv\" (and 1 more)"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = []",
        "plan.toml:7:9: target.names = []; give names of objects in quotes: [\"IC 1805\", \"IC 1848\"]"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [1805]",
        "plan.toml:7:9: target.names = [1805]; give names of objects in quotes: [\"IC 1805\", \"IC 1848\"]"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\", \" \"]",
        "plan.toml:7:21: target.names = \" \"; give a text of 1 to 200 characters"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "name = \"IC 1805\"",
        "plan.toml:7:1: target.name is not known in [target]; did you mean names?"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = IC 1805",
        "plan.toml:7:9: \"names = IC 1805\" is no TOML; a number stands alone without its unit, a text in \"double quotes\", and each line holds one key"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\"",
        "plan.toml:8:1: the text ends too early; a [ is not closed by a ]"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805]",
        "plan.toml:7:19: \"names = [\"IC 1805]\" is no TOML; a text in quotes ends on its own line"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "outline = \"ridge.csv\"",
        "plan.toml:7:11: target.outline = \"ridge.csv\"; there is no such file: ridge.csv"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "outline = \"C:\\ridge.csv\"",
        "plan.toml:7:11: target.outline = \"C:\\ridge.csv\"; a text holds one line; a backslash in it is written twice, or the text stands in single quotes"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\"]\noutline = \"ridge.csv\"",
        "plan.toml:8:11: target.outline = \"ridge.csv\"; there is no such file: ridge.csv (and 1 more)"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\"]\ncentre = \"2h 41m, +61\"\nsize_arcmin = [2, 1]",
        "plan.toml:8:10: target.centre = \"2h 41m, +61\"; the target is given by names already; keep one of names, centre and outline"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\"]\nangle_deg = 40",
        "plan.toml:8:13: target.angle_deg = 40; this goes with centre = \"…\" alone; names and outlines have their own size"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "",
        "plan.toml:6:1: target.names is missing; give names = [\"…\"], or centre and size_arcmin, or outline = \"file.csv\""
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\"]\nmargin_arcmin = -1",
        "plan.toml:8:17: target.margin_arcmin = -1; give minutes of arc from 0 to 600"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"IC 1805\"]\ntitle = \"Late\"",
        "plan.toml:8:1: target.title is not known in [target]; it belongs at the top of the file, above the first [table]"
    )]
    public void Line_OfABadBasicKey_SaysWhatWhereAndWhatWouldBeRight(
        string good,
        string bad,
        string expected
    )
    {
        var refusal = MemoryPlanFiles.Refused(
            PlanTexts.Least.Replace(good, bad, StringComparison.Ordinal)
        );
        Assert.Equal(expected, refusal.Message);
    }

    // The same for a key added below the least plan, in line 9 (its table in line 8).
    [Theory]
    [InlineData(
        "[guide]\nstar = \"edge\"\nfocal_length_mm = 120\npixel_um = 3.75",
        "plan.toml:9:8: guide.star = \"edge\"; give \"centre\" or \"corner\""
    )]
    [InlineData(
        "[site]\nlatitude_deg = 95\nlongitude_deg = 8",
        "plan.toml:9:16: site.latitude_deg = 95; give degrees (north positive) from -90 to 90"
    )]
    [InlineData(
        "[site]\nlatitude_deg = 46\nlongitude_deg = 181",
        "plan.toml:10:17: site.longitude_deg = 181; give degrees (east positive) from -180 to 180"
    )]
    [InlineData(
        "[site]\nlatitude = 46\nlongitude_deg = 8",
        "plan.toml:9:1: site.latitude is not known in [site]; did you mean latitude_deg?"
    )]
    [InlineData(
        "[site]\ntime_zone = \"middle Europe\"\nlatitude_deg = 46\nlongitude_deg = 8",
        "plan.toml:9:13: site.time_zone = \"middle Europe\"; there is no such time zone; give its name, such as \"Europe/Zurich\", or \"UTC\""
    )]
    [InlineData(
        "[site]\nhorizon = \"none.csv\"\nlatitude_deg = 46\nlongitude_deg = 8",
        "plan.toml:9:11: site.horizon = \"none.csv\"; there is no such file: none.csv"
    )]
    [InlineData(
        "[site]\nelevation_m = \"1650 m\"\nlatitude_deg = 46\nlongitude_deg = 8",
        "plan.toml:9:15: site.elevation_m = \"1650 m\"; give a plain number without quotes or unit: metres from -500 to 9000"
    )]
    [InlineData(
        "[rotation]\ncamera_angle_deg = \"37\"",
        "plan.toml:9:20: rotation.camera_angle_deg = \"37\"; give a plain number without quotes or unit: degrees from -360 to 360"
    )]
    [InlineData(
        "[rotation]\ncamera_angle_sigma_deg = 60",
        "plan.toml:9:26: rotation.camera_angle_sigma_deg = 60; give degrees from 0 to 45"
    )]
    [InlineData(
        "[rotation]\nstrategy = 5",
        "plan.toml:9:12: rotation.strategy = 5; give the name of a strategy in quotes, such as \"to-outline\" or \"keep-camera-angle\" (\"framing strategies\" lists them); an angle stands in camera_angle_deg"
    )]
    [InlineData(
        "[mosaic]\noverlap = 0.2",
        "plan.toml:9:11: mosaic.overlap = 0.2; give the name of a strategy in quotes, with its setting beside it: \"fraction\" (overlap_fraction = 0.15), \"arcminutes\" (overlap_arcmin = 30), \"for-pointing\" or \"for-registration\" (\"framing strategies\" lists them)"
    )]
    [InlineData(
        "[rotation]\nfrom_deg = nan",
        "plan.toml:9:12: rotation.from_deg = nan; a strategy's setting is a finite number, a text in quotes, or true or false"
    )]
    [InlineData(
        "[rotation]\nfrom_deg = [1]",
        "plan.toml:9:12: rotation.from_deg = [1]; a strategy's setting is a finite number, a text in quotes, or true or false"
    )]
    [InlineData(
        "[mosaic]\ngrid = [0, 2]",
        "plan.toml:9:8: mosaic.grid = [0, 2]; give \"fewest\", \"adapted\" (panels in bands that follow the outline), or columns and rows, whole numbers from 1 to 1000: [3, 2]"
    )]
    [InlineData(
        "[mosaic]\ngrid = \"most\"",
        "plan.toml:9:8: mosaic.grid = \"most\"; give \"fewest\", \"adapted\" (panels in bands that follow the outline), or columns and rows, whole numbers from 1 to 1000: [3, 2]"
    )]
    [InlineData(
        "[mosaic]\nchance_no_gap = 99",
        "plan.toml:9:17: mosaic.chance_no_gap = 99; give a chance, more than 0 and less than 1"
    )]
    [InlineData(
        "[mosaic]\nchance_no_gap = 1",
        "plan.toml:9:17: mosaic.chance_no_gap = 1; give a chance, more than 0 and less than 1"
    )]
    [InlineData(
        "[mosaic]\nmost_panels = 0",
        "plan.toml:9:15: mosaic.most_panels = 0; give a whole number from 1 to 10000"
    )]
    [InlineData(
        "[mount]\ntype = \"Wedge\"",
        "plan.toml:9:8: mount.type = \"Wedge\"; give \"wedge\" or \"german\""
    )]
    [InlineData(
        "[mount]\nfinish = [\"north\", \"west\"]",
        "plan.toml:9:10: mount.finish = [\"north\", \"west\"]; give the sides from which moves end: [\"east\" or \"west\", \"north\" or \"south\"]"
    )]
    [InlineData(
        "[mount]\nfinish = \"west\"",
        "plan.toml:9:10: mount.finish = \"west\"; give the sides from which moves end: [\"east\" or \"west\", \"north\" or \"south\"]"
    )]
    [InlineData(
        "[mount]\nbacklash_arcmin = 3",
        "plan.toml:9:19: mount.backlash_arcmin = 3; give right ascension and declination, minutes of arc from 0 to 600, such as [3, 3]"
    )]
    [InlineData(
        "[mount]\nspeeds = [{ label = \"1\" }]",
        "plan.toml:9:11: mount.speeds[1].x_sidereal is missing; give multiples of the sidereal rate, more than 0 and at most 10000"
    )]
    [InlineData(
        "[mount]\nspeeds = [{ label = \"1\", x_sidereal = 1 }, { label = \"1\", x_sidereal = 2 }]",
        "plan.toml:9:54: mount.speeds[2].label = \"1\"; two speeds have this label; give each its own"
    )]
    [InlineData(
        "[mount]\nspeeds = [1, 5, 20]",
        "plan.toml:9:10: mount.speeds = [1, 5, 20]; give a list of tables: [[mount.speeds]] with two brackets each, or [ { … }, { … } ]"
    )]
    [InlineData(
        "[mount]\nkeys = \"arrows\"",
        "plan.toml:9:8: mount.keys = \"arrows\"; give a table: { key = value, … }"
    )]
    [InlineData(
        "[mount]\nkeys = { up = \"▲\" }",
        "plan.toml:9:10: mount.keys.up is not known in [mount.keys]; there are east, west, north and south"
    )]
    [InlineData(
        "[mount]\ngoto_frame = \"B1950\"",
        "plan.toml:9:14: mount.goto_frame = \"B1950\"; give \"of-date\" or \"J2000\""
    )]
    [InlineData(
        "[night]\ndate = 2026-02-30",
        "plan.toml:9:8: night.date = 2026-02-30; there is no such date; write year-month-day, such as 2026-12-05"
    )]
    [InlineData(
        "[night]\ndate = \"2026-12-05\"",
        "plan.toml:9:8: night.date = \"2026-12-05\"; give the evening's date without quotes or time, from 1900 to 2100, such as 2026-12-05"
    )]
    [InlineData(
        "[night]\ndate = 2026-12-05T21:00:00",
        "plan.toml:9:8: night.date = 2026-12-05T21:00:00; give the evening's date without quotes or time, from 1900 to 2100, such as 2026-12-05"
    )]
    [InlineData(
        "[night]\ndate = 1899-12-31",
        "plan.toml:9:8: night.date = 1899-12-31; give the evening's date without quotes or time, from 1900 to 2100, such as 2026-12-05"
    )]
    [InlineData(
        "[night]\nexpected_loss = 20",
        "plan.toml:9:17: night.expected_loss = 20; give a share from 0 to less than 1"
    )]
    [InlineData(
        "[night]\nexpected_loss = 1.0",
        "plan.toml:9:17: night.expected_loss = 1.0; give a share from 0 to less than 1"
    )]
    [InlineData(
        "[night]\nnights = 1.0",
        "plan.toml:9:10: night.nights = 1.0; give a whole number from 1 to 60"
    )]
    [InlineData(
        "[night.filter]\nname = \"H-alpha\"\nsub_s = 180",
        "plan.toml:8:1: night.filter = [night.filter]; give a list of tables: [[night.filter]] with two brackets each, or [ { … }, { … } ]"
    )]
    [InlineData(
        "[[night.filter]]\nname = \"H-alpha\"",
        "plan.toml:8:1: night.filter[1].sub_s is missing; give seconds, more than 0 and at most 7200"
    )]
    [InlineData(
        "[[night.filter]]\nsub_s = 180",
        "plan.toml:8:1: night.filter[1].name is missing; give the filter's name in quotes"
    )]
    [InlineData(
        "[[night.filter]]\nname = \"H-alpha\"\nsub_s = 180\nfocus_every_min = 30",
        "plan.toml:11:1: night.filter[1].focus_every_min is not known in [night.filter]; it belongs in [night]"
    )]
    [InlineData(
        "[[night.filter]]\nname = \"H-alpha\"\nsub_s = 180\nmoon_lit_from = 0.5",
        "plan.toml:8:1: night.filter[1].moon_away_deg is missing; give how far from the Moon the filter has to be while so much of it is lit: moon_away_deg = 60"
    )]
    [InlineData(
        "[[night.filter]]\nname = \"H-alpha\"\nsub_s = 180\nmoon_away_deg = 181",
        "plan.toml:11:17: night.filter[1].moon_away_deg = 181; give degrees from 0 to 180"
    )]
    [InlineData(
        "[[night.filters]]\nname = \"H-alpha\"\nsub_s = 180",
        "plan.toml:8:1: night.filters is not known in [night]; did you mean filter?"
    )]
    [InlineData(
        "[sky]\nsky_mag_arcsec2 = 5",
        "plan.toml:9:19: sky.sky_mag_arcsec2 = 5; give magnitudes per square arcsecond from 10 to 23"
    )]
    [InlineData(
        "[power]\nbattery_wh = 512",
        "plan.toml:8:1: power.loads is missing; give what hangs on the battery: [ { name = \"camera\", w = 24 }, … ]"
    )]
    [InlineData(
        "[power]\nbattery_wh = 512\nloads = [{ name = \"mount\", w = 9, duty = 60 }]",
        "plan.toml:10:42: power.loads[1].duty = 60; give a share from 0 to 1"
    )]
    [InlineData(
        "[power]\nbattery_wh = 512\nloads = []\nchemistry = \"gold\"",
        "plan.toml:11:13: power.chemistry = \"gold\"; give \"LiFePO4\", \"Li-ion\" or \"lead-acid\""
    )]
    [InlineData(
        "[rig]\nbinning = 2",
        "plan.toml:8:1: rig is given twice, first in line 1; keep one"
    )]
    [InlineData(
        "\u0007",
        "plan.toml:8:1: \"?\" is no TOML; a line is a [table], or a key = value, the key in plain letters, digits, _ and -"
    )]
    [InlineData(
        "über = 1",
        "plan.toml:8:1: \"über = 1\" is no TOML; a line is a [table], or a key = value, the key in plain letters, digits, _ and -"
    )]
    public void Line_OfABadFurtherKey_SaysWhatWhereAndWhatWouldBeRight(
        string added,
        string expected
    )
    {
        var refusal = MemoryPlanFiles.Refused(PlanTexts.Least + added + "\n");
        Assert.Equal(expected, refusal.Message);
    }
}
