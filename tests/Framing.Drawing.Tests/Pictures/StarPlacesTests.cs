using Framing.Sky;

namespace Framing.Drawing.Tests;

/// <summary>Stars on the drawn picture against a projection written out here once more, from the textbook formula.</summary>
public sealed class StarPlacesTests
{
    /// <summary>What the chart may be off: 0.3 px of the chart.</summary>
    private const double Tolerance = 0.3;

    [Theory]
    [InlineData(83.8, 0.0, 0.0, false)]
    [InlineData(40.4, 60.9, 0.0, false)]
    [InlineData(0.1, -33.0, 0.0, false)]
    [InlineData(359.95, 85.0, 0.0, false)]
    [InlineData(120.0, 90.0, 0.0, false)]
    [InlineData(200.0, -89.5, 0.0, false)]
    [InlineData(310.0, 45.0, 121.5, false)]
    [InlineData(310.0, 45.0, 301.5, true)]
    public void ToPng_LoneStars_StandWhereTheTangentPlaneHasThem(
        double ra,
        double dec,
        double up,
        bool mirrored
    )
    {
        var centre = InventedSky.At(ra, dec);
        var stars = new List<ChartStar>();
        for (var i = 0; i < 24; i++)
        {
            var direction = centre.Offset(
                PositionAngle.FromDegrees(15.0 + (i * 47.0)),
                Angle.FromDegrees(0.35 + (0.22 * i))
            );
            stars.Add(new(direction, 4.0 + (0.15 * i), 0.4));
        }

        var scene = new SkyScene
        {
            View = new(
                centre,
                Angle.FromDegrees(14.0),
                Angle.FromDegrees(10.0),
                PositionAngle.FromDegrees(up),
                mirrored
            ),
            Stars = stars,
        };
        var picture = SkyPicture.Compose(scene, new(1200, 900));
        var pixels = new Pixels(picture.ToPng());
        var measured = 0;
        foreach (var star in stars)
        {
            var (x, y) = Project(picture.Chart, scene.View, star.Direction);
            if (!IsLone(picture, stars, star, x, y))
            {
                continue;
            }

            var (foundX, foundY) = Centroid(pixels, x, y);
            Assert.True(
                double.Hypot(foundX - x, foundY - y) < Tolerance,
                FormattableString.Invariant(
                    $"A star expected at {x:0.00}, {y:0.00} was drawn at {foundX:0.00}, {foundY:0.00}."
                )
            );
            measured++;
        }

        Assert.True(
            measured >= 12,
            FormattableString.Invariant($"Only {measured} stars stood alone.")
        );
    }

    /// <summary>
    /// Standard coordinates by spherical trigonometry (Smart 1977, "Textbook on Spherical Astronomy", section 161), turned
    /// and scaled by hand.
    /// </summary>
    private static (double X, double Y) Project(
        ChartGeometry chart,
        ChartView view,
        SkyDirection direction
    )
    {
        var (a, d) = (direction.RightAscension.Radians, direction.Declination.Radians);
        var (a0, d0) = (view.Centre.RightAscension.Radians, view.Centre.Declination.Radians);
        var cosine = (Math.Sin(d0) * Math.Sin(d)) + (Math.Cos(d0) * Math.Cos(d) * Math.Cos(a - a0));
        var xi = Math.Cos(d) * Math.Sin(a - a0) / cosine;
        var eta =
            ((Math.Cos(d0) * Math.Sin(d)) - (Math.Sin(d0) * Math.Cos(d) * Math.Cos(a - a0)))
            / cosine;
        var t = view.Up.Radians;
        var upwards = (xi * Math.Sin(t)) + (eta * Math.Cos(t));
        var leftwards = (xi * Math.Cos(t)) - (eta * Math.Sin(t));
        var pixel = Math.Max(
            2.0 * Math.Tan(view.Width.Radians / 2.0) / chart.Width,
            2.0 * Math.Tan(view.Height.Radians / 2.0) / chart.Height
        );
        var right = view.Mirrored ? leftwards : -leftwards;
        return (
            chart.Left + (chart.Width / 2.0) + (right / pixel),
            chart.Top + (chart.Height / 2.0) - (upwards / pixel)
        );
    }

    private static bool IsLone(
        SkyPicture picture,
        List<ChartStar> stars,
        ChartStar star,
        double x,
        double y
    )
    {
        const double clear = 30.0;
        var chart = picture.Chart;
        if (
            x < chart.Left + 90.0
            || x > chart.Left + chart.Width - 90.0
            || y < chart.Top + 90.0
            || y > chart.Top + chart.Height - 90.0
        )
        {
            return false;
        }

        foreach (var label in picture.Labels)
        {
            if (
                x > label.Left - clear
                && x < label.Right + clear
                && y > label.Top - clear
                && y < label.Bottom + clear
            )
            {
                return false;
            }
        }

        return stars.TrueForAll(other =>
        {
            if (other.Direction == star.Direction)
            {
                return true;
            }

            var (otherX, otherY) = Project(chart, chart.View, other.Direction);
            return double.Hypot(otherX - x, otherY - y) > 2.0 * clear;
        });
    }

    /// <summary>The centre of light in a window, over the median of its rim; lines of the grid are far weaker than a star.</summary>
    private static (double X, double Y) Centroid(Pixels pixels, double x, double y)
    {
        const int half = 14;
        var (column, row) = ((int)Math.Floor(x), (int)Math.Floor(y));
        var ground = pixels[column - half, row - half];
        var (sum, sumX, sumY) = (0.0, 0.0, 0.0);
        for (var j = row - half; j <= row + half; j++)
        {
            for (var i = column - half; i <= column + half; i++)
            {
                // A pixel of the grid stands about 100 above the ground; a star's own pixels up to 680.
                var light = pixels.Above(i, j, ground);
                light = light < 130.0 ? 0.0 : light;
                sum += light;
                sumX += light * (i + 0.5);
                sumY += light * (j + 0.5);
            }
        }

        return (sumX / sum, sumY / sum);
    }
}
