using System.Globalization;
using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class SkyPictureTests
{
    public static TheoryData<double, double> Fields =>
        new()
        {
            { 83.8, 0.0 },
            { 0.0, 60.0 },
            { 359.99, -45.0 },
            { 30.0, 85.0 },
            { 0.0, 90.0 },
            { 77.0, -90.0 },
        };

    [Fact]
    public void ToPng_Twice_SameBytes()
    {
        var scene = InventedSky.Scene(40.4, 60.9);
        Assert.Equal(SkyPicture.Compose(scene).ToPng(), SkyPicture.Compose(scene).ToPng());
    }

    [Fact]
    public void ToPng_OtherCulture_SameBytes()
    {
        var scene = InventedSky.Scene(40.4, 60.9);
        var expected = SkyPicture.Compose(scene).ToPng();
        var before = CultureInfo.CurrentCulture;
        try
        {
            var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            culture.NumberFormat.NumberDecimalSeparator = ",";
            culture.NumberFormat.NegativeSign = "~";
            CultureInfo.CurrentCulture = culture;
            Assert.Equal(expected, SkyPicture.Compose(scene).ToPng());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(320, 200)]
    [InlineData(800, 500)]
    [InlineData(1600, 1000)]
    [InlineData(400, 1200)]
    [InlineData(2400, 300)]
    public void ToPng_AnySize_HasThatSize(int width, int height)
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(40.4, 60.9), new(width, height));
        var pixels = new Pixels(picture.ToPng());
        Assert.Equal((width, height), (pixels.Width, pixels.Height));
        Assert.True(picture.Chart.Width > width / 3);
        Assert.True(picture.Chart.Height > height / 3);
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public void Compose_ManyLabels_NoneMeetsAnother(double ra, double dec)
    {
        foreach (
            var size in (PictureSize[])
                [new(1600, 1000), new(800, 500), new(320, 200), new(700, 1100)]
        )
        {
            var labels = SkyPicture.Compose(InventedSky.Scene(ra, dec), size).Labels;
            for (var i = 0; i < labels.Count; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    var (a, b) = (labels[i], labels[j]);
                    Assert.False(
                        a.Left < b.Right
                            && b.Left < a.Right
                            && a.Top < b.Bottom
                            && b.Top < a.Bottom,
                        $"{a} meets {b} at {size}."
                    );
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public void Compose_EveryField_MarksWhatMatters(double ra, double dec)
    {
        var labels = SkyPicture.Compose(InventedSky.Scene(ra, dec)).Labels;
        Assert.Single(labels, label => label is { Text: "N", Kind: LabelKind.Direction });
        Assert.Single(labels, label => label is { Text: "E", Kind: LabelKind.Direction });
        Assert.Single(labels, label => label.Kind == LabelKind.Scale);
        Assert.Single(labels, label => label is { Text: "The ember", Kind: LabelKind.Target });
        Assert.Equal(
            "1 2",
            string.Join(
                ' ',
                labels.Where(label => label.Kind == LabelKind.Panel).Select(label => label.Text)
            )
        );
        Assert.True(labels.Count(label => label.Kind == LabelKind.Coordinate) >= 5);
        Assert.True(labels.Count(label => label.Kind == LabelKind.Object) >= 5);
        Assert.True(labels.Count(label => label.Kind == LabelKind.Star) >= 5);
    }

    [Fact]
    public void ToPng_Night_RedAlone()
    {
        var picture = SkyPicture.Compose(
            InventedSky.Scene(40.4, 60.9),
            new(1600, 1000),
            PicturePalette.Night
        );
        var pixels = new Pixels(picture.ToPng());
        Assert.All(pixels.All, colour => Assert.True(colour.Green <= 2 && colour.Blue <= 2));
        Assert.Contains(pixels.All, colour => colour.Red > 240);
    }

    [Fact]
    public void ToPng_Night_HardlyLight()
    {
        // Measured 6.9 of 255 in the mean: a dark picture, whatever is added to it later.
        var picture = SkyPicture.Compose(
            InventedSky.Scene(40.4, 60.9),
            new(1600, 1000),
            PicturePalette.Night
        );
        Assert.True(new Pixels(picture.ToPng()).All.Average(colour => colour.Red) < 12.0);
    }

    [Fact]
    public void Compose_ManyStars_LeavesOutTheFaintest()
    {
        var few = SkyPicture.Compose(InventedSky.Scene(40.4, 60.9, stars: 500));
        var many = SkyPicture.Compose(InventedSky.Scene(40.4, 60.9, stars: 30000));
        Assert.True(many.FaintestMagnitude < few.FaintestMagnitude);
    }

    [Fact]
    public void Compose_Empty_StillAChart()
    {
        var scene = new SkyScene
        {
            View = new(InventedSky.At(0.0, 0.0), Angle.FromDegrees(3.0), Angle.FromDegrees(2.0)),
        };
        var picture = SkyPicture.Compose(scene);
        Assert.NotEmpty(picture.ToPng());
        Assert.Contains(picture.Labels, label => label.Text == "0° 00′");
    }

    [Fact]
    public void ChartOf_Scene_IsTheChartOfItsPicture()
    {
        var scene = InventedSky.Scene(40.4, 60.9);
        var chart = SkyPicture.ChartOf(scene);
        var drawn = SkyPicture.Compose(scene).Chart;
        Assert.Equal(drawn.WorldCoordinates.ReferencePixel, chart.WorldCoordinates.ReferencePixel);
        Assert.Equal(drawn.WorldCoordinates.Matrix, chart.WorldCoordinates.Matrix);
    }

    [Theory]
    [InlineData(320, 8000)]
    [InlineData(8000, 200)]
    [InlineData(640, 200)]
    [InlineData(480, 640)]
    [InlineData(8000, 8000)]
    public void Compose_ExtremeSize_EverythingStandsOnThePage(int width, int height)
    {
        var scene = InventedSky.Scene(40.4, 60.9, stars: 100) with
        {
            Title = string.Join(' ', Enumerable.Repeat("A very long title", 30)),
        };
        var picture = SkyPicture.Compose(scene, new(width, height));
        Assert.True(picture.Chart.Width > 100 && picture.Chart.Height > 60);
        Assert.All(
            picture.Labels,
            label =>
                Assert.True(
                    label.Left >= 0.0
                        && label.Top >= 0.0
                        && label.Right <= width
                        && label.Bottom <= height,
                    FormattableString.Invariant($"{label} leaves {width} x {height}.")
                )
        );
    }

    [Fact]
    public void ToPng_InsideAndOutsideThePanels_ApartInBrightness()
    {
        var scene = InventedSky.Scene(40.4, 60.9, stars: 0) with { Objects = [], Targets = [] };
        var picture = SkyPicture.Compose(scene);
        var pixels = new Pixels(picture.ToPng());
        var inside = scene
            .Panels[0]
            .Centre.Offset(PositionAngle.FromDegrees(21.2), Angle.FromDegrees(0.6));
        Assert.True(picture.Chart.TrySkyToPicture(inside, out var place));
        Assert.Equal(Palette.Day.ChartInside, MostCommonAround(pixels, place));
        Assert.Equal(
            Palette.Day.ChartOutside,
            MostCommonAround(pixels, new(picture.Chart.Left + 30.0, picture.Chart.Top + 30.0))
        );
    }

    [Fact]
    public void ToPng_FallsShort_IsHatched()
    {
        var scene = InventedSky.Scene(40.4, 60.9, stars: 0) with { Objects = [], Targets = [] };
        var picture = SkyPicture.Compose(scene);
        var pixels = new Pixels(picture.ToPng());
        var ring = scene.FallsShort[0];
        var middle = SkyDirection.FromVector(ring[0].Vector + ring[1].Vector + ring[2].Vector);
        Assert.True(picture.Chart.TrySkyToPicture(middle, out var place));

        // Across the hatch lines and bare sky take turns.
        var hatched = Enumerable
            .Range(-12, 25)
            .Count(i => At(pixels, place + new PicturePoint(i, i)).Red > 120);
        Assert.InRange(hatched, 3, 16);
    }

    [Theory]
    [InlineData(true, true, "In no panel: short, or a gap")]
    [InlineData(false, true, "Gap between panels")]
    [InlineData(true, false, "Falls short: in no panel")]
    public void Compose_GapsAndThinOverlaps_AreHatchedAndNamed(
        bool fallsShort,
        bool gaps,
        string name
    )
    {
        var scene = InventedSky.Scene(40.4, 60.9, stars: 0) with { Objects = [], Targets = [] };
        var ring = scene.FallsShort[0];
        var picture = SkyPicture.Compose(
            scene with
            {
                FallsShort = fallsShort ? [ring] : [],
                Gaps = gaps ? [ring] : [],
                ThinOverlaps = [ring],
            }
        );

        var names = picture.Labels.Select(label => label.Text).ToList();
        Assert.Contains(name, names);
        Assert.Contains("Overlap less than planned", names);
        var svg = picture.ToSvg();
        Assert.Equal(gaps, svg.Contains("\"gaps\"", StringComparison.Ordinal));
        Assert.Equal(fallsShort, svg.Contains("\"falls-short\"", StringComparison.Ordinal));
        Assert.Contains("\"thin-overlaps\"", svg, StringComparison.Ordinal);

        // One over another does not clear it: an odd number of rings is crossed only within each kind.
        var pixels = new Pixels(picture.ToPng());
        var middle = SkyDirection.FromVector(ring[0].Vector + ring[1].Vector + ring[2].Vector);
        Assert.True(picture.Chart.TrySkyToPicture(middle, out var place));
        Assert.InRange(
            Enumerable
                .Range(-12, 25)
                .Count(i => At(pixels, place + new PicturePoint(i, i)).Red > 120),
            3,
            20
        );
    }

    [Fact]
    public void ToPng_MadeUpStar_IsAnOpenRingAndTheLegendSaysSo()
    {
        var centre = InventedSky.At(40.4, 60.9);
        var away = centre.Offset(PositionAngle.FromDegrees(40.0), Angle.FromDegrees(0.9));
        var scene = new SkyScene
        {
            View = new(centre, Angle.FromDegrees(6.0), Angle.FromDegrees(4.0)),
            Stars = [new(away, 6.0, MadeUp: true), new(centre, 6.0)],
        };
        var picture = SkyPicture.Compose(scene);
        var pixels = new Pixels(picture.ToPng());
        Assert.Contains(picture.Labels, label => label.Text == "Star, made up");
        Assert.True(picture.Chart.TrySkyToPicture(away, out var ring));
        Assert.True(At(pixels, ring).Red < 60, "The middle of a ring is sky.");
        Assert.Contains(
            Enumerable.Range(2, 20),
            i => At(pixels, ring + new PicturePoint(i, 0.0)).Red > 120
        );
        Assert.True(picture.Chart.TrySkyToPicture(centre, out var dot));
        Assert.True(At(pixels, dot).Red > 200, "The middle of a catalogue star is light.");
    }

    [Fact]
    public void Warm_BeforeAPicture_ChangesNothing()
    {
        var scene = InventedSky.Scene(40.4, 60.9);
        var before = SkyPicture.Compose(scene, new(800, 500)).ToPng();
        SkyPicture.Warm();
        Assert.Equal(before, SkyPicture.Compose(scene, new(800, 500)).ToPng());
    }

    private static Colour MostCommonAround(Pixels pixels, PicturePoint place) =>
        Enumerable
            .Range(0, 441)
            .Select(i => At(pixels, place + new PicturePoint((i % 21) - 10.0, (i / 21) - 10.0)))
            .GroupBy(colour => colour)
            .OrderByDescending(group => group.Count())
            .First()
            .Key;

    private static Colour At(Pixels pixels, PicturePoint place)
    {
        var colour = pixels[(int)place.X, (int)place.Y];
        return new(colour.Red, colour.Green, colour.Blue);
    }
}
