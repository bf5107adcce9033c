namespace Framing.Cli.Tests;

public sealed class InspectCommandTests
{
    [Fact]
    public void Inspect_AsJson_HasEveryNameOfTheContract()
    {
        using var session = new Session();
        var json = session
            .Run(
                "inspect",
                Checkout.At("demo-data/hearth-wide.fits"),
                "--pixel",
                "10,33",
                "--sky",
                "38.5, +61.3",
                "--json"
            )
            .Json();
        Assert.Equal(1036, json.GetProperty("size")[0].GetInt32());
        Assert.Equal(705, json.GetProperty("size")[1].GetInt32());
        Assert.Equal(1, json.GetProperty("planes").GetInt32());
        Assert.Equal("uint16", json.GetProperty("sampleFormat").GetString());
        Assert.False(json.GetProperty("rowsTopDown").GetBoolean());
        var wcs = json.GetProperty("wcs");
        Assert.Equal("TAN", wcs.GetProperty("projection").GetString());
        Assert.Equal("none", wcs.GetProperty("distortion").GetString());
        Assert.False(wcs.GetProperty("mirrored").GetBoolean());
        Assert.False(wcs.GetProperty("displayedMirrored").GetBoolean());
        Assert.Equal(4, wcs.GetProperty("cornersDeg").GetArrayLength());
        Assert.InRange(wcs.GetProperty("scaleArcsecPerPx")[0].GetDouble(), 28.2, 28.4);
        Assert.True(json.GetProperty("value")[0].GetDouble() > 0.0);
        Assert.Equal(0, json.GetProperty("warnings").GetArrayLength());

        // There and back again: the pixel of the place that the pixel shows.
        var pixel = json.GetProperty("pixel");
        var place = FormattableString.Invariant(
            $"{pixel.GetProperty("raDeg").GetDouble():R}, {pixel.GetProperty("decDeg").GetDouble():R}"
        );
        var back = session
            .Run("inspect", Checkout.At("demo-data/hearth-wide.fits"), "--sky", place, "--json")
            .Json();
        Assert.Equal(10.0, back.GetProperty("sky").GetProperty("x").GetDouble(), 5);
        Assert.Equal(33.0, back.GetProperty("sky").GetProperty("y").GetDouble(), 5);
    }

    [Fact]
    public void Inspect_OfAPng_TakesTheCardsBesideIt()
    {
        using var session = new Session();
        var outcome = session.Run("inspect", Checkout.At("demo-data/shore.png"));
        Assert.Equal(0, outcome.Code);
        Assert.Contains("shore.wcs.txt", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("720 × 480 px, 3 planes", outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shore.jpg", 3)]
    [InlineData("shore.tif", 1)]
    public void Inspect_OfAJpegOrTiff_TakesTheCardsBesideIt(string name, int planes)
    {
        using var session = new Session();
        var picture = Path.Combine(session.Folder, name);
        File.Copy(Checkout.At($"tests/Framing.Cli.Tests/Data/{name}"), picture);
        File.Copy(Checkout.At("demo-data/shore.wcs.txt"), $"{picture}.wcs.txt");

        var json = session.Run("inspect", picture, "--json").Json();
        var png = session.Run("inspect", Checkout.At("demo-data/shore.png"), "--json").Json();

        Assert.Equal("uint8", json.GetProperty("sampleFormat").GetString());
        Assert.Equal(planes, json.GetProperty("planes").GetInt32());
        Assert.Equal(
            png.GetProperty("wcs").GetProperty("cornersDeg").ToString(),
            json.GetProperty("wcs").GetProperty("cornersDeg").ToString()
        );
    }

    [Theory]
    [InlineData("\"12\" is no place in a picture", "--pixel", "12")]
    [InlineData("\"a,b\" is no place in a picture", "--pixel", "a,b")]
    [InlineData("\"1,nan\" is no place in a picture", "--pixel", "1,nan")]
    [InlineData("declination", "--sky", "10, 95")]
    public void Inspect_OfAPlaceThatCannotBeRead_EndsInOneLine(
        string expected,
        string option,
        string value
    )
    {
        using var session = new Session();
        var outcome = session.Run("inspect", Checkout.At("demo-data/shore.png"), option, value);
        Assert.Equal(2, outcome.Code);
        Assert.Contains(
            expected,
            Assert.Single(outcome.Error.TrimEnd('\n').Split('\n')),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Inspect_OfAPictureWithoutASolution_StillSaysWhatItIs()
    {
        using var session = new Session();
        File.Copy(Checkout.At("demo-data/shore.png"), Path.Combine(session.Folder, "alone.png"));
        var path = Path.Combine(session.Folder, "alone.png");
        var outcome = session.Run("inspect", path, "--pixel", "1,1");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("not known", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("value", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(2, session.Run("inspect", path, "--sky", "10, 20").Code);
        Assert.Equal(
            "Null",
            session.Run("inspect", path, "--json").Json().GetProperty("wcs").ValueKind.ToString()
        );
    }

    [Fact]
    public void Inspect_OfAPlace_WritesItAsTheOtherCommandsDo()
    {
        using var session = new Session();
        var outcome = session.Run("inspect", Checkout.At("demo-data/hearth-wide.fits"));
        Assert.Equal(0, outcome.Code);
        Assert.Contains(
            "centre   2h 38m 24.00s  +61° 18′ 00.0″  (J2000)",
            outcome.Output,
            StringComparison.Ordinal
        );
    }
}
