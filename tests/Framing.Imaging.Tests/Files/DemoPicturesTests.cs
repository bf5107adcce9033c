using System.Globalization;
using Framing.Sky;

namespace Framing.Imaging.Tests;

/// <summary>The pictures of demo-data, held against lonely stars of V 6 to 9 of the Tycho-2 based table (Data/demo/stars.csv).</summary>
public sealed class DemoPicturesTests
{
    [Theory]
    [InlineData("hearth-wide.fits", 1036, 705, 1, 95)]
    [InlineData("shore.png", 720, 480, 3, 20)]
    public void Read_DemoPicture_HasItsStarsWhereItsSolutionSays(
        string name,
        int width,
        int height,
        int planes,
        int least
    )
    {
        var picture = PictureFile.Read(TestData.Path("demo", name));

        Assert.Equal((width, height, planes), (picture.Width, picture.Height, picture.Planes));
        Assert.InRange(
            HeldStars(name, picture.Coordinates!, picture.Plane(0), width, height, float.NaN),
            least,
            200
        );
    }

    [Theory]
    [InlineData("hearth-wide.fits", 15.0, 50)]
    [InlineData("hearth-wide.fits", 33.0, 80)]
    [InlineData("shore.png", 12.0, 15)]
    public void Resample_DemoPicture_HasItsStarsWhereTheChartSays(
        string name,
        double arcseconds,
        int least
    )
    {
        // The chart's row 0 is on top and north is up: y grows downwards.
        var picture = PictureFile.Read(TestData.Path("demo", name));
        var (width, height) = (1400, 1000);
        var chart = new TanWorldCoordinates(
            new((width + 1) / 2.0, (height + 1) / 2.0),
            PictureFile
                .Inspect(TestData.Path("demo", name))
                .Sky!.Centre.Offset(PositionAngle.East, Angle.FromDegrees(0.4)),
            PixelMatrix.FromPositionAngle(
                PositionAngle.North,
                Angle.FromArcseconds(arcseconds),
                mirrored: false
            )
        ).WithRowsReversed(height);

        var drawn = Resampler.Resample(
            picture,
            chart,
            width,
            height,
            cancel: TestContext.Current.CancellationToken
        );

        Assert.InRange(
            HeldStars(name, chart, drawn.Plane(0), width, height, 30f / (float)arcseconds),
            least,
            200
        );
    }

    [Fact]
    public void Inspect_DemoFrame_HasNoWarnings()
    {
        var facts = PictureFile.Inspect(TestData.Path("demo", "hearth-wide.fits"));

        Assert.Empty(facts.Warnings);
        Assert.Equal(("uint16", false), (facts.SampleFormatName, facts.RowsTopDown));
        Assert.Equal(
            (135.0, "H-alpha", 4),
            (facts.Rig.FocalLengthMillimetres, facts.Rig.Filter, facts.Rig.Binning)
        );
        Assert.Equal(8.5, facts.Sky!.DisplayedPositionAngle.Degrees, 1e-3);

        // 1036 pixels of 18.52 um at 135 mm: 2 atan(w / 2f).
        Assert.Equal(
            2.0 * Math.Atan(1036 * 0.01852 / 2.0 / 135.0) * 180.0 / Math.PI,
            facts.Sky.FieldWidth!.Value.Degrees,
            1e-6
        );
    }

    [Fact]
    public void Stretch_OfDemoPictures_SuitsThem()
    {
        var frame = PictureFile.Read(TestData.Path("demo", "hearth-wide.fits"));
        var shore = PictureFile.Read(TestData.Path("demo", "shore.png"));

        // The frame is linear and wants lifting; the picture was lifted by whoever made it.
        Assert.InRange(Stretch.For(frame).Curves[0].Middle, 0.01f, 0.3f);
        Assert.Equal(new ToneCurve(0f, 65535f, 0.5f), Stretch.For(shore).Curves[0]);
    }

    /// <summary>Measures every listed star that lies well within the picture, and asserts its middle to 0.3 pixels.</summary>
    private static int HeldStars(
        string name,
        WorldCoordinates world,
        ReadOnlySpan<float> plane,
        int width,
        int height,
        float zoom
    )
    {
        var held = 0;
        var box = float.IsNaN(zoom) ? 4 : Math.Max(4, (int)MathF.Ceiling(4 * zoom));
        foreach (var line in File.ReadLines(TestData.Path("demo", "stars.csv")).Skip(1))
        {
            var fields = line.Split(',');
            var direction = SkyDirection.FromDegrees(
                double.Parse(fields[1], CultureInfo.InvariantCulture),
                double.Parse(fields[2], CultureInfo.InvariantCulture)
            );
            if (
                fields[0] != name
                || !world.TrySkyToPixel(direction, out var at)
                || at.X < box + 3
                || at.X > width - box - 3
                || at.Y < box + 3
                || at.Y > height - box - 3
                || Middle(plane, width, at, box) is not { } middle
            )
            {
                continue;
            }

            held++;
            Assert.InRange(double.Hypot(middle.X - at.X, middle.Y - at.Y), 0.0, 0.3);
        }

        return held;
    }

    /// <summary>The centre of the bright part of a box; null where the picture does not fill it.</summary>
    private static PixelPosition? Middle(
        ReadOnlySpan<float> plane,
        int width,
        PixelPosition at,
        int box
    )
    {
        var (column, row) = ((int)Math.Round(at.X) - 1, (int)Math.Round(at.Y) - 1);
        var samples = new List<float>();
        for (var y = row - box; y <= row + box; y++)
        {
            samples.AddRange(plane.Slice((y * width) + column - box, (2 * box) + 1));
        }

        if (samples.Exists(float.IsNaN))
        {
            return null;
        }

        // A fifth of the way up to the peak: nebula and faint neighbours stay below.
        var median = samples.Order().ElementAt(samples.Count / 2);
        var level = median + (0.2f * (samples.Max() - median));
        var (sum, x0, y0) = (0.0, 0.0, 0.0);
        for (var i = 0; i < samples.Count; i++)
        {
            var light = Math.Max(0f, samples[i] - level);
            sum += light;
            x0 += light * (column - box + (i % ((2 * box) + 1)) + 1);
            y0 += light * (row - box + (i / ((2 * box) + 1)) + 1);
        }

        return new(x0 / sum, y0 / sum);
    }
}
