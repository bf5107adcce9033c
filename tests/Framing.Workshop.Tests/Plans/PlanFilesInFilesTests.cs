using Framing.Sky;

namespace Framing.Workshop.Tests;

/// <summary>Tables and rows of numbers that lie in files of their own.</summary>
public sealed class PlanFilesInFilesTests
{
    private const string RigKeys =
        "focal_length_mm = 250\nsensor_px = [4144, 2822]\npixel_um = 4.63\n";
    private const string Plan = "rig = \"../kit/lens.toml\"\n[target]\nnames = [\"IC 1805\"]\n";

    [Theory]
    [InlineData(RigKeys)]
    [InlineData("[rig]\n" + RigKeys)]
    [InlineData("[rig]\n" + RigKeys + "[mount]\ntype = \"german\"\n")]
    public void Rig_OfAnotherFile_IsRead(string rig)
    {
        var plan = new MemoryPlanFiles()
            .With("plans/a.toml", Plan)
            .With("kit/lens.toml", rig)
            .Read("plans/a.toml");
        Assert.Equal(new Rig(250.0, new Sensor(4144, 2822, 4.63)), plan.Rig);
    }

    [Fact]
    public void Fault_OfAnotherFile_NamesThatFile()
    {
        var files = new MemoryPlanFiles().With("plans/a.toml", Plan);
        Assert.Equal(
            "plans/a.toml:1:7: rig = \"../kit/lens.toml\"; there is no such file: kit/lens.toml",
            files.RefusedPlan("plans/a.toml").Message
        );
        Assert.Equal(
            "kit/lens.toml:2:11: rig.binning = 0; give a whole number of pixels from 1 to 16",
            files
                .With("kit/lens.toml", "# lens\nbinning = 0\n" + RigKeys)
                .RefusedPlan("plans/a.toml")
                .Message
        );
        Assert.Equal(
            "kit/lens.toml:1:18: \"focal_length_mm == 250\" is no TOML; a number stands alone without its unit, a text in \"double quotes\", and each line holds one key",
            files
                .With("kit/lens.toml", "focal_length_mm == 250\n")
                .RefusedPlan("plans/a.toml")
                .Message
        );
        Assert.Equal(
            "kit/lens.toml:4:1: rig.colour is not known in [rig]; there are focal_length_mm, pixel_um, sensor_px, binning and mirrored",
            files
                .With("kit/lens.toml", RigKeys + "colour = 1\n")
                .RefusedPlan("plans/a.toml")
                .Message
        );
        Assert.Equal(
            "kit/lens.toml:5:1: rik is not known at the top of the file; did you mean rig?",
            files
                .With("kit/lens.toml", "[rig]\n" + RigKeys + "[rik]\n")
                .RefusedPlan("plans/a.toml")
                .Message
        );
    }

    [Fact]
    public void Horizon_OfASiteFile_LiesBesideTheSiteFile()
    {
        var plan = new MemoryPlanFiles()
            .With("plans/a.toml", "site = \"../meadow/site.toml\"\n" + PlanTexts.Least)
            .With(
                "meadow/site.toml",
                "latitude_deg = 46\nlongitude_deg = 8\nhorizon = \"line.csv\"\n"
            )
            .With("meadow/line.csv", PlanTexts.Horizon)
            .Read("plans/a.toml");
        Assert.Equal(4, plan.Site!.Horizon.Points.Count);
    }

    [Theory]
    [InlineData(
        "",
        "line.csv: the file is empty; its first line names the columns: azimuth_deg,altitude_deg"
    )]
    [InlineData(
        "0,5\n90,5\n",
        "line.csv:1:1: \"0,5\" is not the header; the first line names the columns: azimuth_deg,altitude_deg"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n",
        "line.csv: a horizon needs two azimuths or more"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n90,north\n",
        "line.csv:3:1: altitude_deg = north; give degrees from -10 to 90"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n90,nan\n",
        "line.csv:3:1: altitude_deg = nan; give degrees from -10 to 90"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n361,6\n",
        "line.csv:3:1: azimuth_deg = 361; give degrees from 0 to 360"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n90\n",
        "line.csv:3:1: \"90\" has 1 columns; the header has 2"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n10,3\n90,5\n# a comment\n90,6\n",
        "line.csv:5:1: azimuth_deg = 90; azimuths have to grow from row to row, from 0 to 360, and the row before has 90"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n120.5,8\n90,6\n",
        "line.csv:4:1: azimuth_deg = 90; azimuths have to grow from row to row, from 0 to 360, and the row before has 120.5"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n400,6\n",
        "line.csv:3:1: azimuth_deg = 400; give degrees from 0 to 360"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n90,95\n",
        "line.csv:3:1: altitude_deg = 95; give degrees from -10 to 90"
    )]
    [InlineData(
        "azimuth_deg,altitude_deg\n0,5\n90,8\n360,6\n",
        "line.csv:4:1: azimuth_deg = 360; this is north again, where line 2 has another altitude; keep one"
    )]
    public void Horizon_ThatIsWrong_IsOneLine(string csv, string expected)
    {
        var refusal = new MemoryPlanFiles()
            .With(
                "plan.toml",
                PlanTexts.Least
                    + "[site]\nlatitude_deg = 46\nlongitude_deg = 8\nhorizon = \"line.csv\"\n"
            )
            .With("line.csv", csv)
            .RefusedPlan();
        Assert.Equal(expected, refusal.Message);
    }

    [Fact]
    public void Horizon_WithNorthTwice_KeepsItOnce()
    {
        var plan = new MemoryPlanFiles()
            .With(
                "plan.toml",
                PlanTexts.Least
                    + "[site]\nlatitude_deg = 46\nlongitude_deg = 8\nhorizon = \"line.csv\"\n"
            )
            .With(
                "line.csv",
                "altitude_deg,azimuth_deg,remark\r\n\r\n5,0,tree\r\n8, 90,\"barn\"\r\n5,360,\r\n"
            )
            .Read();
        Assert.Equal(
            [0.0, 90.0],
            plan.Site!.Horizon.Points.Select(point => Math.Round(point.Azimuth.Degrees, 9))
        );
    }

    [Theory]
    [InlineData("ra_deg,dec_deg\n40,60\n44,60\n44,62\n40,62\n40,60\n", 1, 4)]
    [InlineData("ra_deg,dec_deg\n40,60\n44,60\n44,62\n\n50,60\n52,60\n52,62\n50,62\n\n", 2, 7)]
    [InlineData(
        "ra_deg,dec_deg,area\n40,60,a\n44,60,a\n44,62,a\n50,60,b\n52,60,b\n52,62,b\n50,62,b\n",
        2,
        7
    )]
    public void Outline_OfRings_IsRead(string csv, int areas, int corners)
    {
        var outline = OutlineOf(csv).Read().Target.Outline!;
        Assert.Equal(areas, outline.Areas.Count);
        Assert.Equal(corners, outline.Corners.Count);
        Assert.Equal(40.0, outline.Corners[0].RightAscension.Degrees, 1e-9);
        Assert.Equal(60.0, outline.Corners[0].Declination.Degrees, 1e-9);
    }

    [Theory]
    [InlineData("ra_deg,dec_deg\n", "ridge.csv: the outline has no corners; give three or more")]
    [InlineData(
        "ra_deg,dec_deg\n40,60\n44,60\n",
        "ridge.csv:2:1: the outline is no area on the sky: a polygon has three or more corners, not 2"
    )]
    [InlineData(
        "ra_deg,dec_deg\n40,60\n44,91\n44,62\n",
        "ridge.csv:3:1: dec_deg = 91; give degrees from -90 to 90"
    )]
    [InlineData(
        "ra_deg,dec_deg\n-40,60\n44,61\n44,62\n",
        "ridge.csv:2:1: ra_deg = -40; give degrees from 0 to 360"
    )]
    public void Outline_ThatIsWrong_IsOneLine(string csv, string expected) =>
        Assert.Equal(expected, OutlineOf(csv).RefusedPlan().Message);

    [Fact]
    public void Outline_OverTheWholeSky_IsRefused() =>
        Assert.StartsWith(
            "ridge.csv:2:1: the outline is no area on the sky: ",
            OutlineOf("ra_deg,dec_deg\n0,0\n120,0\n240,0\n").RefusedPlan().Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void ReadRigSiteMount_OfTheDemoFiles_AreThoseOfTheBuiltInPlan()
    {
        var plan = PlanFileReader.ReadBuiltIn();
        var demo = Path.Combine(TestFolders.Root, "demo-data");
        Assert.Equal(plan.Rig, PlanFileReader.ReadRig(Path.Combine(demo, "short-lens.toml")));
        Assert.Equal(
            920.0,
            PlanFileReader.ReadRig(Path.Combine(demo, "telescope.toml")).FocalLengthMillimetres
        );
        var site = PlanFileReader.ReadSite(Path.Combine(demo, "meadow.toml"));
        Assert.Equal(plan.Site!.Horizon, site.Horizon);
        Assert.Equal(plan.Site with { Horizon = site.Horizon }, site);
        var mount = PlanFileReader.ReadMount(Path.Combine(demo, "mount.toml"));
        Assert.Equal(plan.Mount.Speeds, mount.Speeds);
        Assert.Equal(plan.Mount with { Speeds = mount.Speeds }, mount);
    }

    private static MemoryPlanFiles OutlineOf(string csv) =>
        new MemoryPlanFiles()
            .With(
                "plan.toml",
                PlanTexts.Least.Replace(
                    "names = [\"IC 1805\"]",
                    "outline = \"ridge.csv\"",
                    StringComparison.Ordinal
                )
            )
            .With("ridge.csv", csv);
}
