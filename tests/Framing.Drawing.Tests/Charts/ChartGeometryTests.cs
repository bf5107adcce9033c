using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class ChartGeometryTests
{
    [Fact]
    public void PictureToSky_ThereAndBack_SamePlace()
    {
        var chart = SkyPicture.ChartOf(InventedSky.Scene(0.0, 89.0, up: 50.0));
        var random = new Random(3);
        for (var i = 0; i < 1000; i++)
        {
            var place = new PicturePoint(
                random.NextDouble() * 1600.0,
                random.NextDouble() * 1000.0
            );
            Assert.True(chart.TrySkyToPicture(chart.PictureToSky(place), out var back));
            Assert.Equal(0.0, (back - place).Length, 1e-8);
        }
    }

    [Fact]
    public void TrySkyToPicture_Centre_IsTheMiddleOfTheChart()
    {
        var scene = InventedSky.Scene(40.4, 60.9);
        var chart = SkyPicture.ChartOf(scene);
        Assert.True(chart.TrySkyToPicture(scene.View.Centre, out var place));
        Assert.Equal(chart.Left + (chart.Width / 2.0), place.X, 1e-9);
        Assert.Equal(chart.Top + (chart.Height / 2.0), place.Y, 1e-9);
    }

    [Fact]
    public void TrySkyToPicture_BehindThePlane_IsRefused()
    {
        var scene = InventedSky.Scene(40.4, 60.9);
        Assert.False(SkyPicture.ChartOf(scene).TrySkyToPicture(scene.View.Centre.Antipode, out _));
    }

    [Fact]
    public void FieldWidth_View_IsHeldWhole()
    {
        var view = InventedSky.Scene(40.4, 60.9).View;
        foreach (var size in (PictureSize[])[new(1600, 1000), new(500, 1500), new(2400, 400)])
        {
            var chart = SkyPicture.ChartOf(InventedSky.Scene(40.4, 60.9), size);
            Assert.True(chart.FieldWidth.Degrees >= view.Width.Degrees - 1e-9);
            Assert.True(chart.FieldHeight.Degrees >= view.Height.Degrees - 1e-9);
        }
    }

    [Fact]
    public void ChartWorldCoordinates_FirstPixel_IsTheLowerLeftOfTheChart()
    {
        var chart = SkyPicture.ChartOf(InventedSky.Scene(40.4, 60.9));
        var expected = chart.PictureToSky(new(chart.Left + 0.5, chart.Top + chart.Height - 0.5));
        var found = chart.ChartWorldCoordinates.PixelToSky(new(1.0, 1.0));
        Assert.Equal(0.0, expected.SeparationTo(found).Arcseconds, 1e-6);
    }
}
