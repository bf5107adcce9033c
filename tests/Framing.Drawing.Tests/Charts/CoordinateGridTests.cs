using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class CoordinateGridTests
{
    [Theory]
    [InlineData(83.8, 0.0, 1.5)]
    [InlineData(0.1, 60.0, 6.0)]
    [InlineData(30.0, 85.0, 6.0)]
    [InlineData(0.0, 90.0, 10.0)]
    [InlineData(0.0, -90.0, 60.0)]
    [InlineData(300.0, 40.0, 60.0)]
    [InlineData(300.0, -60.0, 100.0)]
    public void Of_EveryField_LinesAreWhatTheySay(double ra, double dec, double width)
    {
        var chart = SkyPicture.ChartOf(InventedSky.Scene(ra, dec, width, width * 0.6));
        var lines = CoordinateGrid.Of(chart, 125.0);
        Assert.InRange(lines.Count, 5, 60);
        foreach (var line in lines)
        {
            foreach (var point in line.Lines.Runs.SelectMany(run => run.Points))
            {
                var direction = chart.PictureToSky(point);
                if (line.IsMeridian)
                {
                    // Measured across the line, so that the pole is a place like any other.
                    var hours = Read(line.Label, 'h', 'm', 's');
                    var off =
                        (direction.RightAscension - Angle.FromHours(hours)).WrappedSigned.Arcseconds
                        * Math.Cos(direction.Declination.Radians);
                    Assert.Equal(0.0, off, 0.01);
                }
                else
                {
                    var degrees = Read(line.Label.TrimStart('+', '−'), '°', '′', '″');
                    degrees *= line.Label[0] == '−' ? -1.0 : 1.0;
                    Assert.Equal(degrees * 3600.0, direction.Declination.Arcseconds, 0.01);
                }
            }
        }
    }

    [Theory]
    [InlineData(83.8, 0.0)]
    [InlineData(0.1, 60.0)]
    [InlineData(0.0, 90.0)]
    public void Of_EveryField_CrossingsStandOnTheFrame(double ra, double dec)
    {
        var chart = SkyPicture.ChartOf(InventedSky.Scene(ra, dec));
        foreach (var crossing in CoordinateGrid.Of(chart, 125.0).SelectMany(line => line.Crossings))
        {
            var distance = crossing.Edge switch
            {
                FrameEdge.Left => crossing.Place.X - chart.Frame.Left,
                FrameEdge.Right => crossing.Place.X - chart.Frame.Right,
                FrameEdge.Top => crossing.Place.Y - chart.Frame.Top,
                _ => crossing.Place.Y - chart.Frame.Bottom,
            };
            Assert.Equal(0.0, distance, 1e-6);
        }
    }

    private static double Read(string label, params char[] units)
    {
        var value = 0.0;
        var factor = 1.0;
        foreach (var unit in units)
        {
            var end = label.IndexOf(unit, StringComparison.Ordinal);
            if (end < 0)
            {
                break;
            }

            value +=
                factor * int.Parse(label[..end], System.Globalization.CultureInfo.InvariantCulture);
            label = label[(end + 1)..].TrimStart();
            factor /= 60.0;
        }

        return value;
    }
}
