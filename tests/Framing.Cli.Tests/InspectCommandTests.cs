using Framing.Fits;

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

    [Theory]
    [InlineData("sip_terms_plain_ctype", "TAN; lens distortion SIP, not used")]
    [InlineData("sip_terms_plain_ctype", "! The header has SIP terms (A_ORDER, B_ORDER)")]
    [InlineData("sip_forward_only", "TAN; lens distortion SIP, used")]
    [InlineData("roworder_top_down", "+y at 0°, not mirrored as x and y run")]
    [InlineData(
        "roworder_top_down",
        "180°: the way up in the picture, from north through east; mirrored"
    )]
    [InlineData("roworder_top_down", "! ROWORDER = TOP-DOWN")]
    [InlineData("mirrored_cd", "the file's y runs upwards, as shown")]
    [InlineData("mirrored_cd", "62°: the way up in the picture, from north through east; mirrored")]
    [InlineData("fk5_equinox_2026", "written in FK5, equinox 2026.4")]
    public void Inspect_OfACase_SaysWhatIsShownBesideWhatTheFileSays(string name, string expected)
    {
        using var session = new Session();
        var outcome = session.Run("inspect", Case(name));
        Assert.Equal(0, outcome.Code);
        Assert.Contains(expected, outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TAN", "38.0, -70.0", "behind-the-plane", "behind the picture, 90° or more")]
    [InlineData("STG", "218.0, -41.0", "off-the-map", "nowhere on the map of its projection")]
    [InlineData("TAN-SIP", "38.0, 20.0", "not-converged", "lens distortion has no meaning there")]
    public void Inspect_OfAPlaceThatThePictureCannotShow_SaysWhy(
        string projection,
        string place,
        string failure,
        string words
    )
    {
        using var session = new Session();
        var path = Path.Combine(session.Folder, "frame.fits");
        var cards = new FitsHeaderBuilder()
            .Add("CTYPE1", "RA---" + projection)
            .Add("CTYPE2", "DEC--" + projection)
            .Add("CRPIX1", 2.0)
            .Add("CRPIX2", 2.0)
            .Add("CRVAL1", 38.0)
            .Add("CRVAL2", 41.0)
            .Add("CD1_1", -0.01)
            .Add("CD1_2", 0.0)
            .Add("CD2_1", 0.0)
            .Add("CD2_2", 0.01);
        if (projection == "TAN-SIP")
        {
            // Along y the polynomial turns back at 500 px.
            cards.Add("A_ORDER", 2L).Add("B_ORDER", 2L).Add("B_0_2", 1e-3);
        }

        FitsWriter.WriteImage<byte>(path, 3, 3, 1, new byte[9], cards);

        var text = session.Run("inspect", path, "--sky", place);
        var json = session.Run("inspect", path, "--sky", place, "--json").Json();

        Assert.Equal(0, text.Code);
        Assert.Contains(words, text.Output, StringComparison.Ordinal);
        var sky = json.GetProperty("sky");
        Assert.Equal(failure, sky.GetProperty("failure").GetString());
        Assert.Equal("Null", sky.GetProperty("x").ValueKind.ToString());
        Assert.False(sky.GetProperty("inside").GetBoolean());
    }

    private static string Case(string name) =>
        Checkout.At($"tests/Framing.Fits.Tests/Data/cases/{name}.fits");
}
