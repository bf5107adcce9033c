using System.Globalization;
using System.Text;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Cli.Tests;

public sealed class SolveCommandTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Solve_Blind_SaysWhereAndHowSure(bool mirrored)
    {
        using var session = new Session();
        var frame = new PaintedFrame { Mirrored = mirrored }.WithCatalogueStars();
        frame.WriteFits(Path.Combine(session.Folder, "field.fits"), ("XPIXSZ", 4.63));
        var outcome = session.Run("solve", "field.fits", "--json");
        Assert.Equal(0, outcome.Code);
        Assert.Equal("", outcome.Error);
        var json = outcome.Json();
        Assert.True(json.GetProperty("solved").GetBoolean());
        AssertPlace(frame, json);
        var wcs = json.GetProperty("wcs");
        Assert.Equal(mirrored, wcs.GetProperty("mirrored").GetBoolean());
        Assert.Equal(mirrored, wcs.GetProperty("displayedMirrored").GetBoolean());
        Assert.Equal(4, wcs.GetProperty("cornersDeg").GetArrayLength());
        Assert.StartsWith(
            "TAN",
            wcs.GetProperty("projection").GetString(),
            StringComparison.Ordinal
        );
        Assert.InRange(json.GetProperty("starsMatched").GetInt32(), 60, 2000);
        Assert.InRange(
            json.GetProperty("starsFound").GetInt32(),
            json.GetProperty("starsMatched").GetInt32(),
            2000
        );
        Assert.InRange(json.GetProperty("rmsArcsec").GetDouble(), 0.1, 0.5 * 20.0);
        Assert.InRange(json.GetProperty("falseMatchProbability").GetDouble(), 0.0, 1e-7);

        // 206.265 times 4.63 µm over 20 seconds of arc.
        Assert.Equal(47.75, json.GetProperty("focalLengthMm").GetDouble(), 0.02);
        Assert.InRange(json.GetProperty("seconds").GetDouble(), 0.0, 1e4);
    }

    [Fact]
    public void Solve_AsText_SaysItInAFewLines()
    {
        using var session = new Session();
        new PaintedFrame()
            .WithCatalogueStars()
            .WriteFits(Path.Combine(session.Folder, "field.fits"));
        var outcome = session.Run("solve", "field.fits");
        Assert.Equal(0, outcome.Code);
        Assert.StartsWith(
            "field.fits\n  centre   2h 32m 4",
            outcome.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("6.66° × 4.44°, 20.0", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("  camera   137", outcome.Output, StringComparison.Ordinal);
        Assert.Contains(" identified, ", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("!", outcome.Output, StringComparison.Ordinal);
        Assert.InRange(outcome.Output.Count(letter => letter == '\n'), 6, 9);
    }

    [Fact]
    public void Solve_WithAHint_FindsTheSame()
    {
        using var session = new Session();
        var frame = new PaintedFrame().WithCatalogueStars();
        frame.WriteFits(Path.Combine(session.Folder, "field.fits"));
        foreach (
            var hint in new string[][]
            {
                ["--near", "IC 1805", "--scale", "20.4"],
                ["--near", "30, 55"],
                ["--scale", "19.6"],
            }
        )
        {
            var outcome = session.Run(["solve", "field.fits", "--json", .. hint]);
            Assert.Equal(0, outcome.Code);
            AssertPlace(frame, outcome.Json());
            Assert.Equal(0, outcome.Json().GetProperty("warnings").GetArrayLength());
        }
    }

    [Fact]
    public void Solve_ElsewhereThanExpected_SolvesItAndSaysSo()
    {
        using var session = new Session();
        var frame = new PaintedFrame().WithCatalogueStars();
        frame.WriteFits(Path.Combine(session.Folder, "field.fits"));
        var outcome = session.Run("solve", "field.fits", "--near", "vega", "--scale", "25");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("! It points ", outcome.Output, StringComparison.Ordinal);
        Assert.Contains(
            "20 % off the 25″ that were given",
            outcome.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Solve_Write_PutsTheSolutionIntoTheHeader()
    {
        using var session = new Session();
        var frame = new PaintedFrame().WithCatalogueStars();
        var path = frame.WriteFits(Path.Combine(session.Folder, "field.fits"));
        var before = File.ReadAllBytes(path);
        var outcome = session.Run("solve", "field.fits", "--write");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("  written  into its header", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(["field.fits"], session.Files());
        var after = File.ReadAllBytes(path);
        var samples = 2 * frame.Width * frame.Height;
        Assert.Equal(
            before.AsSpan(^((samples + 2879) / 2880 * 2880)..),
            after.AsSpan(^((samples + 2879) / 2880 * 2880)..)
        );
        AssertPlace(frame, session.Run("inspect", path, "--json").Json());

        // The second time the frame itself says where to look.
        var again = session.Run("solve", "field.fits", "--json");
        AssertPlace(frame, again.Json());
    }

    [Fact]
    public void Solve_WriteOfATiff_PutsTheSolutionBesideIt()
    {
        using var session = new Session();
        var frame = new PaintedFrame().WithCatalogueStars();
        var path = frame.WriteTiff(Path.Combine(session.Folder, "field.tif"));
        var before = File.ReadAllBytes(path);
        var outcome = session.Run("solve", "field.tif", "--write");
        Assert.Equal(0, outcome.Code);
        Assert.Contains(
            "beside it, in field.tif.wcs.txt",
            outcome.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("does not say when it was taken", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(["field.tif", "field.tif.wcs.txt"], session.Files());
        Assert.Equal(before, File.ReadAllBytes(path));
        AssertPlace(frame, session.Run("inspect", path, "--json").Json());
    }

    [Fact]
    public void Solve_ASmallField_WithTheUsersTable()
    {
        using var session = new Session();
        var random = new Random(11);
        var frame = new PaintedFrame { ArcsecondsPerPixel = 1.2 };
        var table = new StringBuilder("id,ra_deg,dec_deg,mag\n");
        for (var i = 0; i < 900; i++)
        {
            var star = SkyDirection.FromDegrees(
                38.2 + (1.2 * (random.NextDouble() - 0.5)),
                61.5 + (0.7 * (random.NextDouble() - 0.5))
            );
            var magnitude = 7.0 + (4.0 * Math.Sqrt(random.NextDouble()));
            table.Append(
                CultureInfo.InvariantCulture,
                $"{i},{star.RightAscension.Degrees:R},{star.Declination.Degrees:R},{magnitude:0.00}\n"
            );
            frame.Star(star, magnitude);
        }

        frame.WriteFits(Path.Combine(session.Folder, "small.fits"));
        session.Write("deep.csv", table.ToString());
        var without = session.Run("solve", "small.fits", "--near", "IC 1805", "--scale", "1.2");
        Assert.Equal(3, without.Code);
        var outcome = session.Run(
            "solve",
            "small.fits",
            "--json",
            "--near",
            "38.3,61.4",
            "--scale",
            "1.2",
            "--stars",
            "deep.csv"
        );
        Assert.Equal(0, outcome.Code);
        AssertPlace(frame, outcome.Json());
    }

    [Fact]
    public void Solve_OutOfFocus_IsSolvedWhereItCanBeAndSaysSo()
    {
        using var session = new Session();
        var frame = new PaintedFrame { Blur = 9.0 }.WithCatalogueStars(8.0);
        frame.WriteFits(Path.Combine(session.Folder, "discs.fits"));
        var outcome = session.Run("solve", "discs.fits");
        Assert.Equal(0, outcome.Code);
        Assert.Contains(
            "! Solved all the same, but out of focus: ",
            outcome.Output,
            StringComparison.Ordinal
        );
    }

    public static TheoryData<string, string, int> NoStars =>
        new()
        {
            { "flat", "no stars: the frame is even all over", 3 },
            { "bias", "no stars: the frame is even all over", 3 },
            { "daylight", "no stars: |match nothing", 3 },
            { "defocused", "out of focus: ", 3 },
            { "few", "too few stars", 3 },
            { "random", "match nothing", 3 },
            { "half", "truncated", 2 },
            { "empty", "empty", 2 },
            { "text", "text.fits: ", 2 },
            { "absent", "absent.fits: ", 2 },
        };

    [Theory]
    [MemberData(nameof(NoStars))]
    public void Solve_WhatShowsNoField_OneClearLine(string kind, string words, int code)
    {
        using var session = new Session();
        var path = Path.Combine(session.Folder, kind + ".fits");
        Make(kind, path);
        var files = session.Files();
        foreach (var more in new string[][] { [], ["--near", "vega", "--scale", "20"] })
        {
            var outcome = session.Run(["solve", kind + ".fits", "--write", .. more]);
            Assert.Equal(code, outcome.Code);
            Assert.Equal("", outcome.Output);
            Assert.Equal(1, outcome.Error.Count(letter => letter == '\n'));
            Assert.Matches(words, outcome.Error);
            Assert.Contains(kind + ".fits", outcome.Error, StringComparison.Ordinal);
            Assert.Equal(files, session.Files());
        }

        if (code == 3)
        {
            var json = session.Run("solve", kind + ".fits", "--json").Json();
            Assert.False(json.GetProperty("solved").GetBoolean());
            Assert.Equal(JsonValueKind.Null, json.GetProperty("wcs").ValueKind);
            Assert.Equal(JsonValueKind.Null, json.GetProperty("falseMatchProbability").ValueKind);
            Assert.Matches(words, $"{kind}.fits: {json.GetProperty("whyNot").GetString()}");
        }
    }

    [Theory]
    [InlineData("--scale: \"0\" is not between", "--scale", "0")]
    [InlineData("--scale: \"wide\" is not between", "--scale", "wide")]
    [InlineData("--near: \"nowhere at all\"", "--near", "nowhere at all")]
    [InlineData("--near", "--near", "400,10")]
    [InlineData("none.csv", "--stars", "none.csv")]
    public void Solve_WrongWords_OneClearLine(string words, params string[] more)
    {
        using var session = new Session();
        new PaintedFrame(200, 150).WriteFits(Path.Combine(session.Folder, "field.fits"));
        var outcome = session.Run(["solve", "field.fits", .. more]);
        Assert.Equal(2, outcome.Code);
        Assert.Equal("", outcome.Output);
        Assert.Equal(1, outcome.Error.Count(letter => letter == '\n'));
        Assert.Contains(words, outcome.Error, StringComparison.Ordinal);
    }

    private static void Make(string kind, string path)
    {
        var random = new Random(5);
        switch (kind)
        {
            case "flat":
                new PaintedFrame(noise: 120.0)
                    .Add(
                        (x, y) =>
                            24000.0
                            - (0.012 * (((x - 600.0) * (x - 600.0)) + ((y - 400.0) * (y - 400.0))))
                    )
                    .WriteFits(path);
                break;
            case "bias":
                new PaintedFrame(noise: 6.0).Add((_, y) => 3.0 * (y % 2)).WriteFits(path);
                break;
            case "daylight":
                // Roofs and sky, a fence, leaves.
                new PaintedFrame()
                    .Add(
                        (x, y) =>
                            y > 430 + (90.0 * Math.Abs(Math.Sin(x / 140.0))) ? 30000.0 : 6000.0
                    )
                    .Add((x, y) => y < 250 && x % 23 < 9 ? 9000.0 : 0.0)
                    .Add(
                        (x, y) =>
                            y < 430
                                ? 5000.0
                                    * (random.NextDouble() + Math.Sin(x / 5.0) + Math.Cos(y / 4.0))
                                : 0.0
                    )
                    .WriteFits(path);
                break;
            case "defocused":
                Strewn(new PaintedFrame { Blur = 12.0 }, 40, 3.0, random).WriteFits(path);
                break;
            case "few":
                new PaintedFrame().WithCatalogueStars(7.0).WriteFits(path);
                break;
            case "random":
                Strewn(new PaintedFrame(), 150, 6.0, random).WriteFits(path);
                break;
            case "half":
                new PaintedFrame().WithCatalogueStars().WriteFits(path);
                using (var stream = File.OpenWrite(path))
                {
                    stream.SetLength(stream.Length / 2);
                }

                break;
            case "empty":
                File.WriteAllBytes(path, []);
                break;
            case "text":
                File.WriteAllText(path, "not a frame\n");
                break;
        }
    }

    private static PaintedFrame Strewn(
        PaintedFrame frame,
        int count,
        double brightest,
        Random random
    )
    {
        for (var i = 0; i < count; i++)
        {
            frame.Star(
                SkyDirection.FromDegrees(
                    38.2 + (12.0 * (random.NextDouble() - 0.5)),
                    61.5 + (4.0 * (random.NextDouble() - 0.5))
                ),
                brightest + (4.0 * random.NextDouble())
            );
        }

        return frame;
    }

    /// <summary>The middle within 0.2 px, the angle within 0.01°, the scale within 1/5000.</summary>
    private static void AssertPlace(PaintedFrame frame, JsonElement json)
    {
        var wcs = json.GetProperty("wcs");
        var centre = SkyDirection.FromDegrees(
            wcs.GetProperty("centre").GetProperty("raDeg").GetDouble(),
            wcs.GetProperty("centre").GetProperty("decDeg").GetDouble()
        );
        Assert.InRange(
            centre.SeparationTo(frame.Centre).Arcseconds / frame.ArcsecondsPerPixel,
            0.0,
            0.2
        );
        Assert.Equal(frame.UpDegrees, wcs.GetProperty("positionAngleDeg").GetDouble(), 0.01);
        Assert.Equal(
            frame.UpDegrees,
            wcs.GetProperty("displayedPositionAngleDeg").GetDouble(),
            0.01
        );
        Assert.Equal(
            1.0,
            wcs.GetProperty("scaleArcsecPerPx")[0].GetDouble() / frame.ArcsecondsPerPixel,
            2e-4
        );
    }
}
