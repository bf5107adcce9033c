using System.Text.Json;

namespace Framing.Cli.Tests;

public sealed class BackdropTests
{
    [Theory]
    [InlineData("samples/two-panels.toml", "demo-data/hearth-wide.fits")]
    [InlineData("samples/single-frame.toml", "demo-data/shore.png")]
    public void Plan_OverAPicture_DrawsItUnderTheSameFraming(string sample, string picture)
    {
        using var session = new Session();
        session.Run("plan", Checkout.At(sample), "--out", "plain");

        var outcome = session.Run(
            "plan",
            Checkout.At(sample),
            "--backdrop",
            Checkout.At(picture),
            "--out",
            "over"
        );

        Assert.Equal(0, outcome.Code);
        Assert.Equal(string.Empty, outcome.Error);
        byte[] Of(string file) => File.ReadAllBytes(Path.Combine(session.Folder, file));
        Assert.Equal(Of("plain/report.json"), Of("over/report.json"));
        Assert.NotEqual(Of("plain/sky.png"), Of("over/sky.png"));
        Assert.True(Of("over/sky.png").Length > Of("plain/sky.png").Length);
    }

    /// <summary>The demo picture saved in another format, its solution's cards beside it: the same place, the same framing.</summary>
    [Theory]
    [InlineData("shore.jpg")]
    [InlineData("shore.tif")]
    public void Plan_OverAndLikeAPictureOfAnotherFormat_TakesIt(string name)
    {
        using var session = new Session();
        var picture = Path.Combine(session.Folder, name);
        File.Copy(Checkout.At($"tests/Framing.Cli.Tests/Data/{name}"), picture);
        File.Copy(
            Checkout.At("demo-data/shore.wcs.txt"),
            Path.Combine(session.Folder, "shore.wcs.txt")
        );
        byte[] Of(string file) => File.ReadAllBytes(Path.Combine(session.Folder, file));
        var sample = Checkout.At("samples/single-frame.toml");
        session.Run("plan", sample, "--out", "plain");

        var over = session.Run("plan", sample, "--backdrop", picture, "--out", "over");
        var like = session.Run("plan", sample, "--like", picture, "--out", "like");
        var likePng = session.Run(
            "plan",
            sample,
            "--like",
            Checkout.At("demo-data/shore.png"),
            "--out",
            "like-png"
        );

        Assert.Equal((0, 0, 0), (over.Code, like.Code, likePng.Code));
        Assert.Equal(string.Empty, over.Error);
        Assert.Equal(Of("plain/report.json"), Of("over/report.json"));
        Assert.True(Of("over/sky.png").Length > Of("plain/sky.png").Length);
        Assert.Equal(Of("like-png/panels.csv"), Of("like/panels.csv"));
    }

    [Fact]
    public void Plan_OverAPictureThatLiesElsewhere_SaysSo()
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            Checkout.At("samples/single-frame.toml"),
            "--backdrop",
            Checkout.At("demo-data/hearth-wide.fits"),
            "--out",
            "x"
        );
        Assert.Equal(0, outcome.Code);
        Assert.Contains("nothing of it is seen", outcome.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--backdrop")]
    [InlineData("--like")]
    public void Plan_WithAPictureThatHasNoSolution_SaysWhatToDo(string option)
    {
        using var session = new Session();
        File.Copy(Checkout.At("demo-data/shore.png"), Path.Combine(session.Folder, "alone.png"));

        var outcome = session.Run("plan", option, Path.Combine(session.Folder, "alone.png"));

        Assert.Equal(2, outcome.Code);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains("alone.png.wcs.txt", line, StringComparison.Ordinal);
        Assert.Equal(["alone.png"], session.Files());
    }

    [Theory]
    [InlineData("--backdrop")]
    [InlineData("--like")]
    public void Plan_WithAPictureThatCannotBeRead_EndsInOneLine(string option)
    {
        using var session = new Session();
        var whole = File.ReadAllBytes(Checkout.At("demo-data/hearth-wide.fits"));
        File.WriteAllBytes(Path.Combine(session.Folder, "cut.fits"), whole[..50_000]);

        foreach (var name in new[] { "cut.fits", "missing.fits" })
        {
            var outcome = session.Run("plan", option, Path.Combine(session.Folder, name));
            Assert.Equal(2, outcome.Code);
            Assert.Contains(
                name,
                Assert.Single(outcome.Error.TrimEnd('\n').Split('\n')),
                StringComparison.Ordinal
            );
        }

        Assert.Equal(["cut.fits"], session.Files());
    }

    [Fact]
    public void Plan_LikeAFrame_TakesItsCentreAndAngle()
    {
        using var session = new Session();
        var frame = Checkout.At("demo-data/hearth-wide.fits");
        var wcs = session.Run("inspect", frame, "--json").Json().GetProperty("wcs");

        var report = session
            .Run(
                "plan",
                Checkout.At("samples/two-panels.toml"),
                "--like",
                frame,
                "--out",
                "x",
                "--json"
            )
            .Json();

        Assert.Equal(1, report.GetProperty("mosaic").GetProperty("panelCount").GetInt32());
        var panel = report.GetProperty("panels")[0];
        Close(wcs.GetProperty("centre"), panel.GetProperty("centre"), "raDeg");
        Close(wcs.GetProperty("centre"), panel.GetProperty("centre"), "decDeg");
        Assert.Equal(
            wcs.GetProperty("displayedPositionAngleDeg").GetDouble(),
            panel.GetProperty("positionAngleDeg").GetDouble(),
            8
        );
        Assert.Equal("like", report.GetProperty("rotation").GetProperty("strategy").GetString());
    }

    [Fact]
    public void Plan_LikeAFrameOfElsewhere_SaysThatNothingOfTheTargetIsSeen()
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            Checkout.At("samples/single-frame.toml"),
            "--like",
            Checkout.At("demo-data/hearth-wide.fits"),
            "--out",
            "x"
        );
        Assert.Equal(0, outcome.Code);
        Assert.Contains(
            "shows nothing of California Nebula",
            outcome.Words,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("stars", "Star, made up")]
    [InlineData("nebulae", "Glow, made up")]
    public void Plan_WithSomethingMadeUp_SaysSoInTheLegend(string what, string legend)
    {
        using var session = new Session();
        string Svg(string folder) =>
            File.ReadAllText(Path.Combine(session.Folder, folder, "sky.svg"));
        session.Run("plan", Checkout.At("samples/six-panels.toml"), "--out", "real");
        Assert.DoesNotContain("made up", Svg("real"), StringComparison.Ordinal);

        Assert.Equal(
            0,
            session
                .Run(
                    "plan",
                    Checkout.At("samples/six-panels.toml"),
                    "--out",
                    "x",
                    "--made-up",
                    what
                )
                .Code
        );

        Assert.Contains(legend, Svg("x"), StringComparison.Ordinal);
        Assert.Equal(
            File.ReadAllBytes(Path.Combine(session.Folder, "real/report.json")),
            File.ReadAllBytes(Path.Combine(session.Folder, "x/report.json"))
        );
    }

    private static void Close(JsonElement expected, JsonElement actual, string name) =>
        Assert.Equal(
            expected.GetProperty(name).GetDouble(),
            actual.GetProperty(name).GetDouble(),
            8
        );
}
