using System.Globalization;
using System.Text;
using Framing.Mosaics;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class PlanFileReaderTests
{
    [Fact]
    public void Read_OfEveryKey_KeepsEveryValue()
    {
        var plan = new MemoryPlanFiles()
            .With("plan.toml", PlanTexts.Full)
            .With("horizon.csv", PlanTexts.Horizon)
            .Read();

        Assert.Equal("plan.toml", plan.Path);
        Assert.False(plan.IsBuiltIn);
        Assert.Equal("Two panels across the hearth", plan.Title);
        Assert.Equal(
            new Rig(250.0, new Sensor(4144, 2822, 4.63), binning: 2, mirrored: true),
            plan.Rig
        );
        Assert.Equal(new GuideSection(120.0, 3.75, GuideStar.Centre), plan.Guide);

        var site = plan.Site!;
        Assert.Equal(46.2, site.Latitude.Degrees, 1e-12);
        Assert.Equal(8.1, site.Longitude.Degrees, 1e-12);
        Assert.Equal(1650.0, site.ElevationMetres);
        Assert.Equal("Europe/Zurich", site.TimeZone);
        Assert.Equal(
            [1.5, 2.5, 92.5, 182.5],
            site.Horizon.Points.Select(point => Math.Round(point.Azimuth.Degrees, 9))
        );
        Assert.Equal(
            [11.0, 10.0, 20.0, 5.0],
            site.Horizon.Points.Select(point => Math.Round(point.Altitude.Degrees, 9))
        );
        Assert.Equal(26.0, site.MinAltitude.Degrees, 1e-12);
        Assert.Equal(831.0, site.PressureHectopascals);
        Assert.Equal(-4.0, site.TemperatureCelsius);

        var target = plan.Target;
        Assert.Empty(target.Names);
        Assert.Equal(40.25, target.Box!.Centre.RightAscension.Degrees, 1e-9);
        Assert.Equal(60.9, target.Box.Centre.Declination.Degrees, 1e-9);
        Assert.Equal(260.0, target.Box.Long.Arcminutes, 1e-9);
        Assert.Equal(120.0, target.Box.Short.Arcminutes, 1e-9);
        Assert.Equal(40.0, target.Box.AlongLong.Degrees, 1e-9);
        Assert.Equal(8.0, target.Margin.Arcminutes, 1e-9);

        Assert.Equal("to-outline", plan.Rotation.Strategy.Name);
        Assert.Equal(37.0, plan.Rotation.CameraAngle!.Value.Degrees, 1e-9);
        Assert.Equal(1.5, plan.Rotation.CameraAngleSigma.Degrees, 1e-12);
        Assert.Equal(
            new Dictionary<string, object>(StringComparer.Ordinal)
            {
                ["from_deg"] = 10.0,
                ["steady"] = true,
                ["note"] = "as it comes",
            },
            plan.Rotation.Strategy.Settings
        );

        Assert.Equal("fraction", plan.Mosaic.Overlap.Name);
        Assert.Equal(0.15, Assert.Single(plan.Mosaic.Overlap.Settings).Value);
        Assert.Equal(0.95, plan.Mosaic.ChanceNoGap);
        Assert.Equal(GridWish.Fixed(3, 2), plan.Mosaic.Grid);
        Assert.Equal(90, plan.Mosaic.MostPanels);
        Assert.True(plan.Mosaic.TurnCameraAtEachPanel);

        Assert.Equal(2.5, plan.Sky.Seeing.Arcseconds, 1e-9);
        Assert.Equal(21.3, plan.Sky.MagnitudePerArcsec2);
        Assert.Equal(512.0, plan.Power!.BatteryWattHours);
        Assert.Equal(BatteryChemistry.LeadAcid, plan.Power.Chemistry);
        Assert.Equal(0.75, plan.Power.UsableFraction);
        Assert.Equal(0.1, plan.Power.SpareFraction);
        Assert.Equal([new("camera cooling", 24.0, 0.6), new("mount", 9.0, 1.0)], plan.Power.Loads);
    }

    [Fact]
    public void Read_OfEveryKeyOfMountAndNight_KeepsEveryValue()
    {
        var plan = new MemoryPlanFiles()
            .With("plan.toml", PlanTexts.Full)
            .With("horizon.csv", PlanTexts.Horizon)
            .Read();

        var mount = plan.Mount;
        Assert.Equal(MountType.German, mount.Type);
        Assert.Equal(TimeSpan.FromSeconds(450), mount.MeridianPause);
        Assert.Equal(85.0, mount.DeclinationLimit.Degrees, 1e-12);
        Assert.Equal(GotoFrame.J2000, mount.GotoFrame);
        Assert.Equal(EntryFormat.HmDm, mount.EntryFormat);
        Assert.Equal(DateOrder.DayMonthYear, mount.DateOrder);
        Assert.Equal(21.0, mount.GotoSigma.Arcminutes, 1e-9);
        Assert.Equal(4.0, mount.CentredSigma.Arcminutes, 1e-9);
        Assert.False(mount.CheckEachPanel);
        Assert.Equal(16.0, mount.PolarError.Arcminutes, 1e-9);
        Assert.Equal(2.0, mount.BacklashRightAscension.Arcminutes, 1e-9);
        Assert.Equal(1.5, mount.BacklashDeclination.Arcminutes, 1e-9);
        Assert.Equal(0.98, mount.RateFactorRightAscension);
        Assert.Equal(1.04, mount.RateFactorDeclination);
        Assert.Equal(5.0, mount.ZenithLimit.Degrees, 1e-9);
        Assert.Equal(MountDirection.East, mount.FinishRightAscension);
        Assert.Equal(MountDirection.South, mount.FinishDeclination);
        Assert.False(mount.KeyAddsToTracking);
        Assert.Equal(12.0, mount.DialZero!.Value.Degrees, 1e-9);
        Assert.Equal([new("slow", 0.5), new("fast", 20.0)], mount.Speeds);
        Assert.Equal(new("R", "L", "U", "D"), mount.Keys);

        var night = plan.Night;
        Assert.Equal(new DateOnly(2026, 12, 5), night.Date);
        Assert.Equal(3, night.Nights);
        Assert.Equal(Darkness.Nautical, night.Darkness);
        Assert.Equal(TimeSpan.FromMinutes(150), night.GoalPerPanel);
        Assert.Equal(TimeSpan.FromMinutes(61), night.Setup);
        Assert.Equal(TimeSpan.FromMinutes(11), night.Repoint);
        Assert.Equal(TimeSpan.FromMinutes(62), night.FocusEvery);
        Assert.Equal(TimeSpan.FromMinutes(4), night.Focus);
        Assert.Equal(TimeSpan.FromMinutes(16), night.Flats);
        Assert.Equal(0.25, night.ExpectedLoss);
        Assert.Equal(22.0, night.Dither.Arcseconds, 1e-9);
        Assert.Equal(1.25, night.TrailLimitPx);
        Assert.Equal(
            [
                new(
                    "H-alpha",
                    TimeSpan.FromSeconds(180),
                    TimeSpan.FromSeconds(5),
                    4,
                    TimeSpan.FromSeconds(26),
                    2.0,
                    0.75,
                    new(Angle.FromDegrees(50.0), 0.25)
                ),
                new(
                    "O-III",
                    TimeSpan.FromSeconds(240),
                    TimeSpan.FromSeconds(4),
                    3,
                    TimeSpan.FromSeconds(25),
                    1.0,
                    1.25,
                    default
                ),
            ],
            night.Filters
        );
    }

    [Fact]
    public void Read_OfTheLeast_TakesTheDefaults()
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least);

        Assert.Equal("plan", plan.Title);
        Assert.Equal(new Rig(250.0, new Sensor(4144, 2822, 4.63)), plan.Rig);
        Assert.Null(plan.Guide);
        Assert.Null(plan.Site);
        Assert.Null(plan.Power);
        Assert.Equal(["IC 1805"], plan.Target.Names);
        Assert.Null(plan.Target.Outline);
        Assert.Equal(PlanDefaults.Margin, plan.Target.Margin);
        Assert.Equal("to-outline", plan.Rotation.Strategy.Name);
        Assert.Empty(plan.Rotation.Strategy.Settings);
        Assert.Null(plan.Rotation.CameraAngle);
        Assert.Equal("fraction", plan.Mosaic.Overlap.Name);
        Assert.Equal(GridWish.Fewest, plan.Mosaic.Grid);
        Assert.Equal(PlanDefaults.Mount with { Speeds = plan.Mount.Speeds }, plan.Mount);
        Assert.Equal(PlanDefaults.Night with { Filters = plan.Night.Filters }, plan.Night);
        Assert.Equal(PlanDefaults.Sky, plan.Sky);
    }

    [Fact]
    public void Read_OfASiteWithoutWeather_TakesTheStandardAtmosphere()
    {
        var site = MemoryPlanFiles
            .Plan(
                PlanTexts.Least
                    + "[site]\nlatitude_deg = 46\nlongitude_deg = 8\nelevation_m = 2000\n"
            )
            .Site!;

        // ISO 2533:1975, table of the standard atmosphere at 2000 m (from memory): 794.95 hPa, 2.00 °C.
        Assert.Equal(794.95, site.PressureHectopascals, 0.02);
        Assert.Equal(2.0, site.TemperatureCelsius, 1e-9);
        Assert.Equal("UTC", site.TimeZone);
        Assert.True(site.Horizon.IsFlat);
    }

    [Theory]
    [InlineData("names = [\"IC 1805\"]", "names = \"IC 1805\"")]
    [InlineData("focal_length_mm = 250", "focal_length_mm = 2.5e2")]
    [InlineData("focal_length_mm = 250", "\"focal_length_mm\" = 2_5_0")]
    [InlineData("sensor_px = [4144, 2822]", "sensor_px = [\n  4144, # wide\n  2822,\n]")]
    [InlineData("[rig]", "[ rig ]")]
    [InlineData("\n", "\r\n")]
    public void Read_OfAnotherSpelling_IsTheSamePlan(string one, string other)
    {
        var plan = MemoryPlanFiles.Plan(
            PlanTexts.Least.Replace(one, other, StringComparison.Ordinal)
        );
        Assert.Equal(new Rig(250.0, new Sensor(4144, 2822, 4.63)), plan.Rig);
        Assert.Equal(["IC 1805"], plan.Target.Names);
    }

    [Fact]
    public void Read_OfDottedKeysAndBraces_IsTheSamePlan()
    {
        var plan = MemoryPlanFiles.Plan(
            """
            rig = { focal_length_mm = 250, sensor_px = [4144, 2822], pixel_um = 4.63 }
            target.names = ["IC 1805"]
            night.filter = [ { name = "H-alpha", sub_s = 180 } ]
            night.nights = 2
            """
        );
        Assert.Equal(250.0, plan.Rig.FocalLengthMillimetres);
        Assert.Equal(["IC 1805"], plan.Target.Names);
        Assert.Equal("H-alpha", Assert.Single(plan.Night.Filters).Name);
        Assert.Equal(2, plan.Night.Nights);
    }

    [Fact]
    public void Read_WithAByteOrderMark_IsTheSamePlan()
    {
        byte[] bytes = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(PlanTexts.Least)];
        Assert.Equal(
            ["IC 1805"],
            new MemoryPlanFiles().With("plan.toml", bytes).Read().Target.Names
        );
    }

    [Fact]
    public void Read_UnderAnotherCulture_IsTheSamePlan()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            commas.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = commas;
            Assert.Equal(4.63, MemoryPlanFiles.Plan(PlanTexts.Least).Rig.Sensor.PixelMicrometres);
            Assert.Equal(
                "plan.toml:4:12: rig.pixel_um = 1000.5; give micrometres, more than 0 and at most 1000",
                MemoryPlanFiles
                    .Refused(PlanTexts.Least.Replace("4.63", "1000.5", StringComparison.Ordinal))
                    .Message
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("rig")]
    [InlineData("guide")]
    [InlineData("site")]
    [InlineData("target")]
    [InlineData("mount")]
    [InlineData("mount.keys")]
    [InlineData("night")]
    [InlineData("night.filter")]
    [InlineData("sky")]
    [InlineData("power")]
    public void Read_OfAnUnknownKeyInAnyTable_IsRefused(string table)
    {
        // As the first key of its table, where the table has a header; mount.keys is written in braces.
        var text = table switch
        {
            "mount.keys" => PlanTexts.Full.Replace(
                "keys   = {",
                "keys   = { zzzzzz = 1,",
                StringComparison.Ordinal
            ),
            "night.filter" => PlanTexts.Full.Replace(
                "[[night.filter]]\nname = \"H",
                "[[night.filter]]\nzzzzzz = 1\nname = \"H",
                StringComparison.Ordinal
            ),
            _ => PlanTexts.Full.Replace(
                $"[{table}]\n",
                $"[{table}]\nzzzzzz = 1\n",
                StringComparison.Ordinal
            ),
        };
        var refusal = new MemoryPlanFiles()
            .With("plan.toml", text)
            .With("horizon.csv", PlanTexts.Horizon)
            .RefusedPlan();
        var error = Assert.Single(refusal.Errors);
        var full = table == "night.filter" ? "night.filter[1]" : table;
        Assert.Equal(full + ".zzzzzz", error.Key);
        var start = $"is not known in [{table}]; there are ";
        Assert.StartsWith(start, error.Problem, StringComparison.Ordinal);

        // The plan of these tests holds every key that the reader knows, or one of names, centre and outline.
        var keys = error
            .Problem[start.Length..]
            .Replace(" and ", ", ", StringComparison.Ordinal)
            .Split(", ");
        Assert.All(
            keys.Except(["names", "outline"], StringComparer.Ordinal),
            key => Assert.Matches($@"(?m)(^|[{{, ]){key}\s*=|\[\[?night\.{key}\]", PlanTexts.Full)
        );
        Assert.Equal(
            "zzzzzz",
            text.Split('\n')[error.Place.Line - 1].Substring(error.Place.Column - 1, 6)
        );
    }

    [Fact]
    public void Read_OfSeveralFaults_TellsAllInTheOrderOfTheFile()
    {
        var refusal = MemoryPlanFiles.Refused(
            """
            [target]
            names = ["IC 1805"]
            margin_arcmin = "8"
            [night]
            date = 1800-01-01
            nights = 0
            [rig]
            focal_length_mm = 0
            sensor_px = [4144, 2822]
            pixel_um = 4.63
            """
        );
        Assert.Equal([3, 5, 6, 8], refusal.Errors.Select(error => error.Place.Line));
        Assert.EndsWith(" (and 3 more)", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Read_OfAMissingOrEmptyFile_IsOneLine(int which)
    {
        var refusal =
            which == 0
                ? new MemoryPlanFiles().RefusedPlan("evening.toml")
                : new MemoryPlanFiles().With("evening.toml", "").RefusedPlan("evening.toml");
        Assert.Equal(
            which == 0
                ? "evening.toml: there is no such file"
                : "evening.toml:1:1: rig is missing; give [rig] with focal_length_mm, sensor_px and pixel_um, or rig = \"file.toml\" (and 1 more)",
            refusal.Message
        );
    }

    [Fact]
    public void Read_OfTextThatIsNotUtf8_SaysWhere()
    {
        byte[] bytes = [.. Encoding.UTF8.GetBytes("# a\ntitle = \"ö"), 0xE9, (byte)'"'];
        Assert.Equal(
            "plan.toml:2:11: the file is not UTF-8 text; save it with the encoding UTF-8",
            new MemoryPlanFiles().With("plan.toml", bytes).RefusedPlan().Message
        );
    }

    [Fact]
    public void Read_OfAHugeFile_IsRefusedWithoutReadingOn() =>
        Assert.Equal(
            "plan.toml: the file is longer than 1000000 bytes: it is no plan",
            MemoryPlanFiles.Refused(PlanTexts.Least + new string('#', 1_000_000)).Message
        );

    [Fact]
    public void Read_OfBracketsWithoutEnd_IsRefused() =>
        Assert.Equal(
            "plan.toml: this is no TOML that can be read (brackets in brackets without end)",
            MemoryPlanFiles.Refused("x = " + new string('[', 50_000)).Message
        );

    [Fact]
    public void Read_OfAFolder_IsRefused()
    {
        var folder = Directory.CreateTempSubdirectory("plan-");
        try
        {
            var refusal = Assert.Throws<PlanFileException>(() =>
                PlanFileReader.Read(folder.FullName)
            );
            Assert.Equal(folder.FullName + ": this is a folder, not a file", refusal.Message);
        }
        finally
        {
            folder.Delete();
        }
    }

    [Theory]
    [InlineData("guide", "star", "centre", GuideStar.Centre)]
    [InlineData("guide", "star", "corner", GuideStar.Corner)]
    [InlineData("mount", "type", "wedge", MountType.Wedge)]
    [InlineData("mount", "type", "german", MountType.German)]
    [InlineData("mount", "goto_frame", "of-date", GotoFrame.OfDate)]
    [InlineData("mount", "goto_frame", "J2000", GotoFrame.J2000)]
    [InlineData("mount", "entry_format", "hms-dms", EntryFormat.HmsDms)]
    [InlineData("mount", "entry_format", "hm.m-dm", EntryFormat.HmDm)]
    [InlineData("mount", "entry_format", "degrees", EntryFormat.Degrees)]
    [InlineData("mount", "date_order", "year-month-day", DateOrder.YearMonthDay)]
    [InlineData("mount", "date_order", "month-day-year", DateOrder.MonthDayYear)]
    [InlineData("mount", "date_order", "day-month-year", DateOrder.DayMonthYear)]
    [InlineData("night", "darkness", "astronomical", Darkness.Astronomical)]
    [InlineData("night", "darkness", "nautical", Darkness.Nautical)]
    [InlineData("night", "darkness", "civil", Darkness.Civil)]
    [InlineData("power", "chemistry", "LiFePO4", BatteryChemistry.LithiumIronPhosphate)]
    [InlineData("power", "chemistry", "Li-ion", BatteryChemistry.LithiumIon)]
    [InlineData("power", "chemistry", "lead-acid", BatteryChemistry.LeadAcid)]
    public void Read_OfEveryChoice_IsItsValue(string table, string key, string name, object value)
    {
        var needed = table switch
        {
            "guide" => "focal_length_mm = 120\npixel_um = 3.75\n",
            "power" => "battery_wh = 512\nloads = []\n",
            _ => "",
        };
        var plan = MemoryPlanFiles.Plan(
            PlanTexts.Least + $"[{table}]\n{needed}{key} = \"{name}\"\n"
        );
        object read = key switch
        {
            "star" => plan.Guide!.Star,
            "type" => plan.Mount.Type,
            "goto_frame" => plan.Mount.GotoFrame,
            "entry_format" => plan.Mount.EntryFormat,
            "date_order" => plan.Mount.DateOrder,
            "darkness" => plan.Night.Darkness,
            _ => plan.Power!.Chemistry,
        };
        Assert.Equal(value, read);
    }
}
