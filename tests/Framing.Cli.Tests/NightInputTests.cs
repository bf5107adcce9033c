namespace Framing.Cli.Tests;

/// <summary>Wrong places, clocks, dates, skylines, subs and batteries: one line that names what and where, exit code 2.</summary>
public sealed class NightInputTests
{
    private const string Site = """
        latitude_deg = 46.2
        longitude_deg = 8.1
        time_zone = "Europe/Zurich"

        """;

    private const string Plan = """
        title = "A night"
        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63
        [site]
        latitude_deg = 46.2
        longitude_deg = 8.1
        time_zone = "Europe/Zurich"
        horizon = "skyline.csv"
        [target]
        names = ["IC 1805"]
        [night]
        date = 2026-12-05
        [[night.filter]]
        name = "H-alpha"
        sub_s = 180
        [power]
        battery_wh = 512
        loads = [{ name = "mount", w = 9 }]

        """;

    private const string Skyline = "azimuth_deg,altitude_deg\n0,10\n90,12\n180,4\n270,8\n";

    [Theory]
    [InlineData("latitude_deg = 46.2", "latitude_deg = 95", "95", "-90 to 90")]
    [InlineData("latitude_deg = 46.2", "latitude_deg = nan", "nan", "-90 to 90")]
    [InlineData("longitude_deg = 8.1", "longitude_deg = 361", "361", "-180 to 180")]
    [InlineData("\"Europe/Zurich\"", "\"Mars/Base\"", "Mars/Base", "time zone")]
    [InlineData("\"Europe/Zurich\"", "\"Europe/Zurick\"", "Europe/Zurick", "Europe/Zurich")]
    [InlineData("date = 2026-12-05", "date = 2026-02-30", "2026-02-30", "")]
    [InlineData("date = 2026-12-05", "date = \"tonight\"", "tonight", "2026-12-05")]
    [InlineData("sub_s = 180", "sub_s = 0", "sub_s", "more than 0")]
    [InlineData("sub_s = 180", "sub_s = -5", "-5", "more than 0")]
    [InlineData("battery_wh = 512", "battery_wh = -512", "-512", "more than 0")]
    [InlineData(
        "battery_wh = 512",
        "battery_wh = 512\nspare_fraction = 1",
        "spare_fraction",
        "less than 1"
    )]
    [InlineData(
        "battery_wh = 512",
        "battery_wh = 512\nusable_fraction = 0",
        "usable_fraction",
        "more than 0"
    )]
    [InlineData("w = 9", "w = -9", "-9", "watts")]
    public void Plan_WithAWrongValue_IsRefusedInOneLine(
        string right,
        string wrong,
        string named,
        string wanted
    )
    {
        using var session = new Session();
        session.Write("skyline.csv", Skyline);
        Assert.Contains(right, Plan, StringComparison.Ordinal);
        var plan = session.Write("plan.toml", Plan.Replace(right, wrong, StringComparison.Ordinal));
        var outcome = session.Run("plan", plan, "--out", "out");
        Refused(session, outcome, "plan.toml", named, wanted);
    }

    [Theory]
    [InlineData("azimuth_deg,altitude_deg\n0,10\n180,4\n90,12\n", "90", "grow")]
    [InlineData("azimuth_deg,altitude_deg\n0,10\n400,4\n", "400", "360")]
    [InlineData("azimuth_deg,altitude_deg\n0,10\n90,95\n", "95", "90")]
    [InlineData("azimuth_deg,altitude_deg\n0,10\n90,high\n", "high", "")]
    [InlineData("azimuth_deg,altitude_deg\n0,10\n", "skyline.csv", "two")]
    [InlineData("", "skyline.csv", "azimuth_deg")]
    public void Plan_WithAWrongSkyline_IsRefusedInOneLine(string text, string named, string wanted)
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", Plan);
        session.Write("skyline.csv", text);
        var outcome = session.Run("plan", plan, "--out", "out");
        Refused(session, outcome, "skyline.csv", named, wanted);
    }

    [Theory]
    [InlineData("latitude_deg = 46.2", "latitude_deg = 95", "95", "-90 to 90")]
    [InlineData("\"Europe/Zurich\"", "\"Mars/Base\"", "Mars/Base", "time zone")]
    public void WhereAndTonight_WithAWrongSite_AreRefusedInOneLine(
        string right,
        string wrong,
        string named,
        string wanted
    )
    {
        using var session = new Session();
        session.Write("site.toml", Site.Replace(right, wrong, StringComparison.Ordinal));
        var rig = Checkout.At("demo-data/short-lens.toml");
        Refused(
            session,
            session.Run("where", "heart nebula", "--site", "site.toml"),
            "site.toml",
            named,
            wanted
        );
        Refused(session, session.Run("tonight", rig, "site.toml"), "site.toml", named, wanted);
    }

    [Theory]
    [InlineData("tonight", "--date", "2026-02-30")]
    [InlineData("plan", "--date", "2026-02-30")]
    [InlineData("tonight", "--date", "1850-01-01")]
    public void Date_ThatIsNone_IsRefusedInOneLine(string command, string option, string date)
    {
        using var session = new Session();
        session.Write("site.toml", Site);
        string[] words =
            command == "plan"
                ? ["plan", option, date]
                : ["tonight", Checkout.At("demo-data/short-lens.toml"), "site.toml", option, date];
        Refused(session, session.Run(words), "--date", date, "2026-12-05");
    }

    [Fact]
    public void Date_BeforeNightsAreKnown_IsRefusedOrHasNoNight()
    {
        using var session = new Session();
        session.Write("site.toml", Site);
        var rig = Checkout.At("demo-data/short-lens.toml");
        Refused(
            session,
            session.Run("tonight", rig, "site.toml", "--date", "1901-12-31"),
            "1901-12-31",
            "1902",
            "2100"
        );
        Assert.Equal(0, session.Run("plan", "--date", "1901-12-31").Code);
        Assert.Equal(0, session.Run("plan", "--date", "2100-12-31").Code);
    }

    [Theory]
    [InlineData("tonight")]
    [InlineData("tonight", "rig.toml")]
    [InlineData("tonight", "", "site.toml")]
    [InlineData("tonight", "rig.toml", "nowhere.toml")]
    public void Tonight_WithoutItsFiles_IsRefusedInOneLine(params string[] words)
    {
        using var session = new Session();
        session.Write("rig.toml", File.ReadAllText(Checkout.At("demo-data/short-lens.toml")));
        var outcome = session.Run(words);
        Assert.Equal(2, outcome.Code);
        Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Empty(outcome.Output);
    }

    private static void Refused(
        Session session,
        Session.Outcome outcome,
        string place,
        string named,
        string wanted
    )
    {
        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Output);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(place, line, StringComparison.Ordinal);
        Assert.Contains(named, line, StringComparison.Ordinal);
        Assert.Contains(wanted, line, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", line, StringComparison.Ordinal);
        Assert.DoesNotContain(
            session.Files(),
            file => file.StartsWith("out/", StringComparison.Ordinal)
        );
    }
}
