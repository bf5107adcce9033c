using Framing.Catalogue;
using Framing.Drawing;
using Framing.Imaging;
using Framing.Sky;
using SkiaSharp;

namespace Framing.Workshop.Tests.Scenes;

/// <summary>The demo backdrop as drawn: its stars stand where the catalogue's stars belong on the chart.</summary>
public sealed class BackdropStarsTests
{
    private const double RadiansPerDegree = Math.PI / 180.0;

    [Theory]
    [InlineData("hearth-wide.fits", 9.0, 6.0, 6, 40)]
    [InlineData("shore.png", 5.0, 3.4, 10, 10)]
    public void DrawnBackdrop_HasItsStarsWhereTheCatalogueHasThem(
        string name,
        double width,
        double height,
        int half,
        int least
    )
    {
        var path = Path.Combine(TestFolders.Root, "demo-data", name);
        var facts = PictureFile.Inspect(path);
        var middle = facts.Sky!.Centre;
        var year = facts.Rig.Start is { } start
            ? TerrestrialTime.FromUtc(start.UtcDateTime).JulianYear
            : 2000.0;
        var scene = new SkyScene
        {
            View = new(middle, Angle.FromDegrees(width), Angle.FromDegrees(height)),
            Backdrop = SolvedPicture.ReadBackdrop(path, PictureSize.Default, out _),
        };
        var picture = SkyPicture.Compose(scene);
        using var bitmap = SKBitmap.Decode(picture.ToPng());

        var stars = StarCatalogue.Embedded.InCone(middle, Angle.FromDegrees(6.0));
        var alone = picture.Chart.Scale * (2.0 * half);
        var offsets = new List<double>();
        foreach (var star in stars.Where(star => star.VMagnitude is > 6.0 and < 8.5))
        {
            if (
                stars.Any(other =>
                    other != star
                    && other.VMagnitude < star.VMagnitude + 4.0
                    && other.Direction.SeparationTo(star.Direction) < alone
                )
                || !IsWellInside(facts, star.At(year))
                || Place(picture.Chart, star.At(year)) is not { } place
                || Centroid(bitmap, place, half) is not { } found
            )
            {
                continue;
            }

            offsets.Add(double.Hypot(found.X - place.X, found.Y - place.Y));
        }

        Assert.True(offsets.Count >= least, $"only {offsets.Count} lonely stars were measured");
        Assert.All(offsets, offset => Assert.InRange(offset, 0.0, 0.3));
    }

    /// <summary>At the picture's edge a star is cut in two.</summary>
    private static bool IsWellInside(PictureFacts facts, SkyDirection star) =>
        facts.Coordinates!.TrySkyToPixel(star, out var pixel)
        && pixel.X > 12.0
        && pixel.X < facts.Width - 12.0
        && pixel.Y > 12.0
        && pixel.Y < facts.Height - 12.0;

    /// <summary>Spherical formulas, written out apart from the program's vectors: FITS pixel counted from the bottom, turned to picture columns and rows.</summary>
    private static (double X, double Y)? Place(ChartGeometry chart, SkyDirection star)
    {
        var world = chart.WorldCoordinates;
        var (a0, d0) = (
            world.ReferenceDirection.RightAscension.Radians,
            world.ReferenceDirection.Declination.Radians
        );
        var (a, d) = (star.RightAscension.Radians, star.Declination.Radians);
        var c = (Math.Sin(d0) * Math.Sin(d)) + (Math.Cos(d0) * Math.Cos(d) * Math.Cos(a - a0));
        var xi = Math.Cos(d) * Math.Sin(a - a0) / c / RadiansPerDegree;
        var eta =
            ((Math.Cos(d0) * Math.Sin(d)) - (Math.Sin(d0) * Math.Cos(d) * Math.Cos(a - a0)))
            / c
            / RadiansPerDegree;
        var m = world.Matrix;
        var det = (m.Cd11 * m.Cd22) - (m.Cd12 * m.Cd21);
        var x = world.ReferencePixel.X + (((m.Cd22 * xi) - (m.Cd12 * eta)) / det);
        var y = world.ReferencePixel.Y + (((m.Cd11 * eta) - (m.Cd21 * xi)) / det);

        // Pixel k of FITS is centred on k; column k of the picture on k too, counted from 0.
        var (column, row) = (x - 1.0, chart.Picture.Height - y);
        return
            column > chart.Left + 20
            && column < chart.Left + chart.Width - 20
            && row > chart.Top + 20
            && row < chart.Top + chart.Height - 20
            ? (column, row)
            : null;
    }

    /// <summary>The centre of light above the surroundings in a window around a place; null where no star stands out alone.</summary>
    private static (double X, double Y)? Centroid(
        SKBitmap bitmap,
        (double X, double Y) place,
        int half
    )
    {
        var (cx, cy) = ((int)Math.Round(place.X), (int)Math.Round(place.Y));
        var rim = new List<int>();
        for (var i = -half; i <= half; i++)
        {
            rim.AddRange([Light(i, -half), Light(i, half), Light(-half, i), Light(half, i)]);
        }

        int Light(int dx, int dy)
        {
            var pixel = bitmap.GetPixel(cx + dx, cy + dy);
            return pixel.Red + pixel.Green + pixel.Blue;
        }

        rim.Sort();
        var ground = rim[rim.Count / 2];

        // A grid line, a mark or the end of the picture near by: not a star alone.
        if (rim[^1] - ground > 45 || ground - rim[0] > 45)
        {
            return null;
        }

        var (sum, sx, sy) = (0.0, 0.0, 0.0);
        for (var dy = -half; dy <= half; dy++)
        {
            for (var dx = -half; dx <= half; dx++)
            {
                var light = Math.Max(0, Light(dx, dy) - ground - 24);
                sum += light;
                sx += light * dx;
                sy += light * dy;
            }
        }

        return sum > 300.0 ? (cx + (sx / sum), cy + (sy / sum)) : null;
    }
}
