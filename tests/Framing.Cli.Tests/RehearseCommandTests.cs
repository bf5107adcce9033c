using System.Text.Json;
using Framing.Fits;
using Framing.Imaging;

namespace Framing.Cli.Tests;

public sealed class RehearseCommandTests
{
    /// <summary>A small camera, so that frames are made in no time.</summary>
    private const string Plan = """
        title = "Practice"
        [rig]
        focal_length_mm = 50
        sensor_px = [640, 440]
        pixel_um = 6
        [site]
        latitude_deg = 46.2
        longitude_deg = 8.1
        elevation_m = 1650
        time_zone = "Europe/Zurich"
        [target]
        names = ["IC 1805", "IC 1848", "HB 3"]
        [mosaic]
        overlap = "fraction"
        [night]
        date = 2026-12-05
        """;

    [Fact]
    public void Rehearse_Plan_AFrameOfEachPanelWithItsTruth()
    {
        using var session = Practice();

        var outcome = Run(session, "--json");

        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        var frames = outcome.Json().GetProperty("frames");
        Assert.Equal(2, frames.GetArrayLength());
        Assert.Equal(
            [
                "plan.toml",
                "practice-2026-12-05-rehearsal/panel-1.fits",
                "practice-2026-12-05-rehearsal/panel-1.truth.json",
                "practice-2026-12-05-rehearsal/panel-2.fits",
                "practice-2026-12-05-rehearsal/panel-2.truth.json",
            ],
            session.Files()
        );
        var facts = PictureFile.Inspect(frames[1].GetProperty("file").GetString()!);
        var truth = session.Json("practice-2026-12-05-rehearsal/panel-2.truth.json");
        Assert.Equal((640, 440), (facts.Width, facts.Height));
        Assert.Null(facts.Coordinates);
        Assert.Equal(50.0, facts.Rig.FocalLengthMillimetres);
        Assert.Equal("light", truth.GetProperty("kind").GetString());
        Assert.InRange(truth.GetProperty("stars").GetArrayLength(), 100, 1000);
        Assert.NotEqual(50.0, truth.GetProperty("focalLengthMm").GetDouble());
    }

    [Fact]
    public void Rehearse_TwiceTheSame_SameBytes()
    {
        using var session = Practice();

        Assert.Equal(0, Run(session, "--panel", "1", "--out", "a").Code);
        Assert.Equal(0, Run(session, "--panel", "1", "--out", "b").Code);
        Assert.Equal(0, Run(session, "--panel", "1", "--out", "c", "--seed", "2").Code);

        Assert.Equal(Bytes("a/panel-1.fits"), Bytes("b/panel-1.fits"));
        Assert.Equal(Bytes("a/panel-1.truth.json"), Bytes("b/panel-1.truth.json"));
        Assert.NotEqual(Bytes("a/panel-1.fits"), Bytes("c/panel-1.fits"));

        byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(session.Folder, name));
    }

    [Fact]
    public void Rehearse_Evening_GoesOnFromCallToCall()
    {
        using var session = Practice();

        var first = Run(session, "--error", "night/evening.json");
        var hold = Run(
            session,
            "--error",
            "night/evening.json",
            "--press",
            "north,4,10",
            "--press",
            "east,4,5"
        );
        var turn = Run(session, "--error", "night/evening.json", "--turn", "12");

        Assert.Equal((0, 0, 0), (first.Code, hold.Code, turn.Code));
        Assert.Equal("A new evening: the coordinates of panel 1 were typed.\n", first.Error);
        Assert.Equal(
            "night/frame-002.fits: 10 s at 2026-12-05 19:28:45 UTC\n"
                + "The truth lies beside each frame (.truth.json, and night/evening.json): look when you have found it yourself.\n",
            hold.Output
        );
        var frames = Enumerable
            .Range(1, 3)
            .Select(i => session.Json(FormattableString.Invariant($"night/frame-00{i}.truth.json")))
            .ToArray();
        var evening = session.Json("night/evening.json");
        Assert.Equal(3, evening.GetProperty("frames").GetInt32());

        // 10 s at 60 times sidereal is 150' on the axis, the hidden rate error of up to 12 % counted.
        var north = Dec(frames[1]) - Dec(frames[0]);
        var rate = evening.GetProperty("hidden").GetProperty("declinationRate").GetDouble();
        Assert.InRange(north * 60.0, (150.4 * rate) - 3.0, (150.4 * rate) + 3.0);
        Assert.InRange(Angle(frames[2]) - Angle(frames[1]), 9.5, 14.5);

        static double Dec(JsonElement truth) =>
            truth.GetProperty("centre").GetProperty("decDeg").GetDouble();
        static double Angle(JsonElement truth) => truth.GetProperty("positionAngleDeg").GetDouble();
    }

    [Fact]
    public void Rehearse_Typed_PointsThereButForTheHiddenErrors()
    {
        using var session = Practice();

        var outcome = Run(session, "--error", "evening.json", "--typed", "2h 40m, +60.5");

        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        var truth = session.Json("frame-001.truth.json").GetProperty("centre");

        // Of date to J2000 takes 7' away here, the mount up to 2.5 times 20' an axis.
        Assert.InRange(truth.GetProperty("decDeg").GetDouble(), 59.4, 61.4);
        Assert.InRange(truth.GetProperty("raDeg").GetDouble(), 37.0, 42.0);
    }

    [Theory]
    [InlineData("bias")]
    [InlineData("dark")]
    [InlineData("flat")]
    public void Rehearse_OtherKinds_NamedInTheHeader(string kind)
    {
        using var session = Practice();

        var outcome = Run(session, "--panel", "1", "--kind", kind);

        Assert.Equal(0, outcome.Code);
        var facts = PictureFile.Inspect(
            Path.Combine(session.Folder, "practice-2026-12-05-rehearsal/panel-1.fits")
        );
        Assert.Equal(kind, facts.Rig.Kind);
        Assert.Null(facts.Rig.Object);
    }

    [Fact]
    public void Rehearse_CameraOptions_AreTaken()
    {
        using var session = Practice();

        var outcome = Run(
            session,
            "--panel",
            "1",
            "--out",
            "x",
            "--binning",
            "2",
            "--top-down",
            "--exposure",
            "2.5"
        );

        Assert.Equal(0, outcome.Code);
        var facts = PictureFile.Inspect(Path.Combine(session.Folder, "x/panel-1.fits"));
        Assert.Equal((320, 220, true), (facts.Width, facts.Height, facts.RowsTopDown));
        Assert.Equal((2, 2.5), (facts.Rig.Binning, facts.Rig.ExposureSeconds));
        Assert.Equal(SampleFormat.UInt16, facts.SampleFormat);
    }

    [Theory]
    [InlineData("--panel: 9 is no panel of this plan; it has 1 to 2", "--panel", "9")]
    [InlineData(
        "framing rehearse: --panel: \"0\" is no whole number from 1 to 10000.",
        "--panel",
        "0"
    )]
    [InlineData(
        "keys, turns and typed coordinates need an evening that they belong to: add --error FILE",
        "--turn",
        "3"
    )]
    [InlineData(
        "--press: \"9\" is no speed of the mount; its speeds are 1, 2, 3, 4",
        "--error",
        "e.json",
        "--press",
        "east,9,3"
    )]
    [InlineData(
        "framing rehearse: --press: \"up,4,3\" is no key held; write east, west, north or south, the speed's label, and seconds up to 3600, such as east,4,7.5.",
        "--press",
        "up,4,3"
    )]
    [InlineData(
        "framing rehearse: --press: \"0,4,3\" is no key held; write east, west, north or south, the speed's label, and seconds up to 3600, such as east,4,7.5.",
        "--press",
        "0,4,3"
    )]
    [InlineData(
        "framing rehearse: --turn: \"1,5\" is no number from -360 to 360.",
        "--turn",
        "1,5"
    )]
    [InlineData(
        "framing rehearse: --kind: \"lights\" is no kind of frame; there are light, flat, dark and bias.",
        "--kind",
        "lights"
    )]
    [InlineData(
        "framing rehearse: --colour: \"rggb\" is no colour filter; there are RGGB, BGGR, GRBG and GBRG.",
        "--colour",
        "rggb"
    )]
    [InlineData(
        "--colour: a colour filter needs every pixel for itself, but the binning is 2; add --binning 1",
        "--colour",
        "RGGB",
        "--binning",
        "2"
    )]
    public void Rehearse_WrongWords_OneLineAndNothingWritten(string line, params string[] words)
    {
        using var session = Practice();

        var outcome = Run(session, words);

        Assert.Equal(2, outcome.Code);
        Assert.Equal(line + "\n", outcome.Error);
        Assert.Equal(["plan.toml"], session.Files());
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{\"schema\": \"framing-rehearsal/2\"}")]
    [InlineData("{\"schema\": \"framing-rehearsal/1\", \"hidden\": {\"seed\": -1}}")]
    public void Rehearse_FileThatIsNoEvening_OneLine(string text)
    {
        using var session = Practice();
        var path = session.Write("evening.json", text);

        var outcome = Run(session, "--error", "evening.json");

        Assert.Equal(2, outcome.Code);
        Assert.Equal(
            $"{path}: not the file of a rehearsed evening; give another name, or delete it to begin a new evening\n",
            outcome.Error
        );
        Assert.Equal(text, File.ReadAllText(path));
    }

    private static Session.Outcome Run(Session session, params string[] words) =>
        session.Run(["rehearse", Path.Combine(session.Folder, "plan.toml"), .. words]);

    private static Session Practice()
    {
        var session = new Session();
        session.Write("plan.toml", Plan);
        return session;
    }
}
