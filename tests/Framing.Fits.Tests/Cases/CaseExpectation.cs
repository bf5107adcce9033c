using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Fits.Tests;

/// <summary>Holds one named expectation of a case against an image and its solution, with the case's own tolerances.</summary>
internal static class CaseExpectation
{
    private static readonly PixelPosition Centre = new(30.5, 20.5);

    private static readonly PixelPosition[] Corners =
    [
        new(0.5, 0.5),
        new(60.5, 0.5),
        new(60.5, 40.5),
        new(0.5, 40.5),
    ];

    private static readonly PixelPosition[] CornerSamples =
    [
        new(1, 1),
        new(60, 1),
        new(60, 40),
        new(1, 40),
    ];

    /// <summary>Asserts the expectation.</summary>
    /// <returns>False when it is none that an image and its solution answer.</returns>
    public static bool Holds(string id, JsonProperty item, FitsImage image, WorldCoordinates? world)
    {
        var value = item.Value;
        switch (item.Name)
        {
            case "sky_of_pixel":
                AssertSky(
                    value.GetProperty("ra_dec"),
                    world!.PixelToSky(Pixel(value.GetProperty("pixel")))
                );
                break;
            case "pixel_of_sky":
                AssertPixel(
                    value.GetProperty("pixel"),
                    PixelOf(world!, value.GetProperty("ra_dec")),
                    0.01
                );
                break;
            case "pixel_of_pole":
                Assert.True(world!.TrySkyToPixel(SkyDirection.NorthPole, out var pole));
                AssertPixel(value, pole, 0.01);
                break;
            case "pa_of_plus_y":
                Assert.Equal(
                    value.GetDouble(),
                    MatrixAt(world!, Centre).PositionAngleOfY.Degrees,
                    0.01
                );
                break;
            case "pa_of_plus_x":
                Assert.Equal(
                    value.GetDouble(),
                    MatrixAt(world!, Centre).PositionAngleOfX.Degrees,
                    0.01
                );
                break;
            case "pixel_scale_deg":
                Assert.Equal(value.GetDouble(), world!.Matrix.Scale.Degrees, 1e-6);
                break;
            case "scale_arcsec":
                Assert.Equal(value.GetDouble(), world!.Matrix.Scale.Arcseconds, 0.001);
                break;
            case "width_deg":
                Assert.Equal(
                    value.GetDouble(),
                    Span(world!, new(0.5, 20.5), new(60.5, 20.5)),
                    1e-5
                );
                break;
            case "on_sky_width_deg":
                Assert.Equal(
                    value.GetDouble(),
                    Span(world!, new(0.5, 20.5), new(60.5, 20.5)),
                    0.0005
                );
                break;
            case "height_deg":
                Assert.Equal(
                    value.GetDouble(),
                    Span(world!, new(30.5, 0.5), new(30.5, 40.5)),
                    1e-5
                );
                break;
            case "mirrored":
                Assert.Equal(value.GetBoolean(), world!.Matrix.IsMirrored);
                break;
            case "outer_corners":
                AssertSkies(value, world!, Corners);
                break;
            case "corner_sample_centres":
                AssertSkies(value, world!, CornerSamples);
                break;
            case "contains_north_pole":
                Assert.True(
                    world!.TrySkyToPixel(SkyDirection.NorthPole, out var north) && Inside(north)
                );
                break;
            case "inside":
                Assert.All(
                    value.EnumerateObject(),
                    point =>
                        Assert.Equal(point.Value.GetBoolean(), IsInside(world!, point.Name, out _))
                );
                break;
            default:
                return id == "F10" ? HoldsFarPoint(item, world!) : HoldsSamples(item, image, world);
        }

        return true;
    }

    private static bool HoldsFarPoint(JsonProperty item, WorldCoordinates world)
    {
        Assert.Equal(
            item.Value.GetProperty("inside").GetBoolean(),
            IsInside(world, item.Name, out var pixel)
        );
        if (item.Value.TryGetProperty("pixel", out var expected))
        {
            AssertPixel(expected, pixel, 0.01);
        }

        return true;
    }

    private static bool HoldsSamples(JsonProperty item, FitsImage image, WorldCoordinates? world)
    {
        var value = item.Value;
        switch (item.Name)
        {
            case "width":
                Assert.Equal(value.GetInt32(), image.Width);
                break;
            case "height":
                Assert.Equal(value.GetInt32(), image.Height);
                break;
            case "colours":
                Assert.Equal(value.GetInt32(), image.Planes);
                break;
            case "sample":
                var at = Pixel(value.GetProperty("pixel"));
                Assert.Equal(
                    value.GetProperty("value").GetDouble(),
                    Sample(image, 0, (int)at.X, (int)at.Y).Number
                );
                break;
            case "rgb":
                Assert.Equal(
                    TestData.Doubles(value),
                    Enumerable.Range(0, 3).Select(plane => Sample(image, plane, 7, 31).Number)
                );
                break;
            case "values":
                Assert.Equal(
                    TestData.Doubles(value),
                    Enumerable.Range(1, 6).Select(x => Sample(image, 0, x, 1).Number)
                );
                break;
            case "value":
                Assert.Equal(value.GetDouble(), Sample(image, 0, 7, 31).Number);
                break;
            case "defined":
                Assert.Equal(value.GetBoolean(), Sample(image, 0, 7, 31).IsDefined);
                break;
            case "defined_1_1":
                Assert.Equal(value.GetBoolean(), Sample(image, 0, 1, 1).IsDefined);
                break;
            case "value_10_7":
                Assert.Equal(value.GetDouble(), Sample(image, 0, 10, 7).Number, 0.001);
                break;
            case "min" or "min_finite":
                Assert.Equal(value.GetDouble(), All(image).Where(float.IsFinite).Min(), 0.001);
                break;
            case "max" or "max_finite":
                Assert.Equal(value.GetDouble(), All(image).Where(float.IsFinite).Max(), 0.001);
                break;
            case "not_finite":
                Assert.Equal(value.GetInt32(), All(image).Count(sample => !float.IsFinite(sample)));
                break;
            case "fits_pixel":
                Assert.Equal(Pixel(value), Greatest(image));
                break;
            case "ra_dec":
                AssertSky(value, world!.PixelToSky(Greatest(image)));
                break;
            default:
                return false;
        }

        return true;
    }

    private static PixelMatrix MatrixAt(WorldCoordinates world, PixelPosition pixel)
    {
        Assert.True(world.TryMatrixAt(pixel, out var matrix));
        return matrix;
    }

    private static SampleValue Sample(FitsImage image, int plane, int x, int y) =>
        image.ReadSample(plane, x - 1, y - 1);

    private static float[] All(FitsImage image)
    {
        var values = new float[image.Width * image.Height];
        image.ReadRows(0, 0, values);
        return values;
    }

    private static PixelPosition Greatest(FitsImage image)
    {
        var values = All(image);
        var place = Array.IndexOf(values, values.Max());
        return new((place % image.Width) + 1, (place / image.Width) + 1);
    }

    private static PixelPosition Pixel(JsonElement pair) =>
        new(pair[0].GetDouble(), pair[1].GetDouble());

    private static SkyDirection Direction(JsonElement pair) =>
        SkyDirection.FromDegrees(pair[0].GetDouble(), pair[1].GetDouble());

    private static PixelPosition PixelOf(WorldCoordinates world, JsonElement direction)
    {
        Assert.True(world.TrySkyToPixel(Direction(direction), out var pixel));
        return pixel;
    }

    /// <summary>True when a place named "RA 84.75 Dec -6.1" lies in the picture of 60 by 40.</summary>
    private static bool IsInside(WorldCoordinates world, string name, out PixelPosition pixel)
    {
        var words = name.Split(' ');
        var ra = double.Parse(words[1], CultureInfo.InvariantCulture);
        var dec = double.Parse(words[3], CultureInfo.InvariantCulture);
        return world.TrySkyToPixel(SkyDirection.FromDegrees(ra, dec), out pixel) && Inside(pixel);
    }

    private static bool Inside(PixelPosition pixel) =>
        pixel is { X: >= 0.5 and <= 60.5, Y: >= 0.5 and <= 40.5 };

    private static double Span(WorldCoordinates world, PixelPosition from, PixelPosition to) =>
        world.PixelToSky(from).SeparationTo(world.PixelToSky(to)).Degrees;

    private static void AssertSkies(
        JsonElement expected,
        WorldCoordinates world,
        PixelPosition[] pixels
    )
    {
        Assert.Equal(pixels.Length, expected.GetArrayLength());
        for (var i = 0; i < pixels.Length; i++)
        {
            AssertSky(expected[i], world.PixelToSky(pixels[i]));
        }
    }

    private static void AssertSky(JsonElement expected, SkyDirection actual) =>
        Assert.InRange(actual.SeparationTo(Direction(expected)).Arcseconds, 0.0, 1.0);

    private static void AssertPixel(JsonElement expected, PixelPosition actual, double tolerance)
    {
        Assert.Equal(expected[0].GetDouble(), actual.X, tolerance);
        Assert.Equal(expected[1].GetDouble(), actual.Y, tolerance);
    }
}
