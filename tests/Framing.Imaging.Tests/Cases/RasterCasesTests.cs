using System.Text.Json;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging.Tests;

/// <summary>Inputs that a framing tool may meet, with the right answers (Data/cases/cases.json): all of the kind raster.</summary>
public sealed class RasterCasesTests
{
    private static readonly JsonElement[] All =
    [
        .. TestData.Json("cases", "cases.json").GetProperty("cases").EnumerateArray(),
    ];

    [Fact]
    public void Cases_Counted_FiveRastersAndSixOthers()
    {
        Assert.Equal(5, All.Count(entry => entry.GetProperty("kind").GetString() == "raster"));
        Assert.Equal(11, All.Length);
    }

    [Fact]
    public void Grey16_KeepsEveryLevel()
    {
        var entry = Case("F43");
        var picture = PictureFile.Read(File(entry));
        var expected = entry
            .GetProperty("expect")
            .GetProperty("row0")
            .EnumerateArray()
            .Select(item => item.GetSingle())
            .ToArray();

        Assert.Equal(8, expected.Length);
        Assert.Equal(expected, FromTop(picture, 0).ToArray());
        Assert.Equal(
            entry.GetProperty("expect").GetProperty("row3_col0").GetSingle(),
            FromTop(picture, 3)[0]
        );
        Assert.Equal(SampleFormat.UInt16, picture.SampleFormat);
    }

    [Fact]
    public void Palette_WithShortTransparency_IsOpaqueBeyondIt()
    {
        var entry = Case("F44");
        var facts = PictureFile.Inspect(File(entry));
        var columns = 0;
        foreach (var colour in entry.GetProperty("expect").GetProperty("row0").EnumerateArray())
        {
            var samples = PictureFile.ReadSamples(File(entry), new(++columns, facts.Height));
            Assert.Equal(
                colour.EnumerateArray().Select(item => item.GetDouble()),
                samples.Select(sample => sample.Number)
            );
        }

        Assert.Equal(6, columns);
        Assert.Equal((3, true), (facts.Planes, facts.HasAlpha));
    }

    [Fact]
    public void Inspect_HugeClaim_IsRefusedByName()
    {
        var entry = Case("F45");
        var expect = entry.GetProperty("expect");
        Assert.True(expect.GetProperty("refuse").GetBoolean());

        foreach (
            var door in new Action[]
            {
                () => PictureFile.Inspect(File(entry)),
                () => PictureFile.Read(File(entry)),
            }
        )
        {
            var problem = Assert.Throws<UnreadableFileException>(door);
            Assert.Contains(
                expect.GetProperty("names_any").EnumerateArray(),
                word =>
                    problem.Message.Contains(word.GetString()!, StringComparison.OrdinalIgnoreCase)
            );
            Assert.DoesNotContain('\n', problem.Message);
        }
    }

    [Fact]
    public void TurnedJpeg_IsShownUpright()
    {
        var expect = Case("F46").GetProperty("expect").GetProperty("any_of")[0];
        var picture = PictureFile.Read(File(Case("F46")));
        var (width, height) = (
            expect.GetProperty("width").GetInt32(),
            expect.GetProperty("height").GetInt32()
        );
        Assert.Equal((width, height), (picture.Width, picture.Height));

        var quarters = expect.GetProperty("quarters").EnumerateArray().ToArray();
        Assert.Equal(4, quarters.Length);
        for (var quarter = 0; quarter < 4; quarter++)
        {
            var column = (width / 4) + (quarter % 2 * width / 2);
            var fromTop = (height / 4) + (quarter / 2 * height / 2);
            for (var plane = 0; plane < 3; plane++)
            {
                Assert.Equal(
                    quarters[quarter][plane].GetDouble(),
                    FromTop(picture, plane, fromTop)[column],
                    12.0
                );
            }
        }
    }

    [Fact]
    public void PlanesOfATiff_AreItsColours()
    {
        var expect = Case("F47").GetProperty("expect").GetProperty("any_of")[0];
        var path = File(Case("F47"));
        var rgb = expect.GetProperty("rgb").EnumerateArray().Select(item => item.GetDouble());
        var facts = PictureFile.Inspect(path);
        var picture = PictureFile.Read(path);

        Assert.Equal((3, SampleFormat.UInt16), (facts.Planes, facts.SampleFormat));
        Assert.Equal(
            rgb,
            PictureFile.ReadSamples(path, new(3, facts.Height - 1)).Select(one => one.Number)
        );
        Assert.Equal(
            rgb,
            Enumerable.Range(0, 3).Select(plane => (double)FromTop(picture, plane, 1)[2])
        );
    }

    [Fact]
    public void RowsTopDown_ShownAsTheHintSays_PixelsAndPlacesAsStored()
    {
        var expect = Case("F31").GetProperty("expect");
        var path = File(Case("F31"));
        var picture = PictureFile.Read(path);
        var facts = PictureFile.Inspect(path);
        var place = picture.Plane(0).IndexOf(picture.Plane(0).ToArray().Max());
        var row = place / picture.Width;

        Assert.True(picture.RowsTopDown);
        Assert.Equal((5, 3), ((place % picture.Width) + 1, row + 1));
        Assert.Equal(expect.GetProperty("row_shown_top_down").GetInt32(), row);
        Assert.Equal(expect.GetProperty("row_shown_y_up").GetInt32(), picture.Height - 1 - row);
        Assert.Equal(expect.GetProperty("mirrored").GetBoolean(), facts.Sky!.Mirrored);
        Assert.True(facts.Sky.DisplayedMirrored);
        Assert.Equal(
            180.0,
            Math.Abs(facts.Sky.PositionAngle.TurnTo(facts.Sky.DisplayedPositionAngle).Degrees),
            1e-9
        );
        Assert.Contains(
            facts.Warnings,
            text => text.Contains("ROWORDER", StringComparison.Ordinal)
        );
        var direction = SkyDirection.FromDegrees(
            expect.GetProperty("ra_dec")[0].GetDouble(),
            expect.GetProperty("ra_dec")[1].GetDouble()
        );
        Assert.InRange(
            facts.Coordinates!.PixelToSky(new(5, 3)).SeparationTo(direction).Arcseconds,
            0.0,
            1.0
        );
    }

    [Fact]
    public void Mirrored_IsSaidForFileAndDisplay()
    {
        var expect = Case("F07").GetProperty("expect");
        var sky = PictureFile.Inspect(File(Case("F07"))).Sky!;

        Assert.Equal(expect.GetProperty("mirrored").GetBoolean(), sky.Mirrored);
        Assert.True(sky.DisplayedMirrored);
        Assert.Equal(
            expect.GetProperty("pa_of_plus_y").GetDouble(),
            sky.PositionAngle.Degrees,
            0.01
        );
        Assert.Equal(
            expect.GetProperty("pa_of_plus_x").GetDouble(),
            sky.PositionAngleOfX.Degrees,
            0.01
        );
        var corners = expect
            .GetProperty("outer_corners")
            .EnumerateArray()
            .Select(pair => SkyDirection.FromDegrees(pair[0].GetDouble(), pair[1].GetDouble()))
            .ToArray();
        Assert.Equal(4, corners.Length);
        Assert.All(
            corners.Zip(sky.Corners),
            pair => Assert.InRange(pair.First.SeparationTo(pair.Second).Arcseconds, 0.0, 1.0)
        );
        Assert.Equal(
            [sky.Corners[3], sky.Corners[2], sky.Corners[1], sky.Corners[0]],
            sky.DisplayedCorners
        );
    }

    [Fact]
    public void Colours_InPlanes_AreThreePlanes()
    {
        var samples = PictureFile.ReadSamples(File(Case("F17")), new(7, 31));

        Assert.Equal([3107.0, 13107.0, 23107.0], samples.Select(sample => sample.Number));
        Assert.Equal(3, PictureFile.Read(File(Case("F17"))).Planes);
        Assert.Equal("uint16", PictureFile.Inspect(File(Case("F19"))).SampleFormatName);
    }

    [Fact]
    public void FloatWithNaN_IsShownAndNotBlank()
    {
        // F20: picture_not_blank. The picture is a ramp, so that its stretch must show many levels.
        var picture = PictureFile.Read(File(Case("F20")));
        var shown = new byte[picture.Width * picture.Height];

        Stretch.Automatic(picture).Apply(0, picture.Plane(0), shown);

        Assert.InRange(shown.Distinct().Count(), 50, 256);
        Assert.Equal(4, picture.Plane(0).ToArray().Count(sample => !float.IsFinite(sample)));
    }

    [Fact]
    public void ImageInExtension_IsFound()
    {
        var facts = PictureFile.Inspect(File(Case("F16")));

        Assert.Equal((60, 40), (facts.Width, facts.Height));
        Assert.NotNull(facts.Sky);
    }

    private static JsonElement Case(string id) =>
        All.Single(entry => entry.GetProperty("id").GetString() == id);

    private static string File(JsonElement entry) =>
        TestData.Path("cases", entry.GetProperty("file").GetString()!);

    private static ReadOnlySpan<float> FromTop(Picture picture, int row) =>
        FromTop(picture, 0, row);

    private static ReadOnlySpan<float> FromTop(Picture picture, int plane, int row) =>
        picture.Plane(plane).Slice((picture.Height - 1 - row) * picture.Width, picture.Width);
}
