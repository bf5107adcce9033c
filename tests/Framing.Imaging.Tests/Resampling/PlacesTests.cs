using Framing.Sky;

namespace Framing.Imaging.Tests;

/// <summary>
/// Where each pixel of a chart takes its value from, for charts and pictures of every projection, against the way over the
/// sky point by point. The picture's samples are its own coordinates, which bilinear drawing gives back exactly.
/// </summary>
public sealed class PlacesTests
{
    private const int Width = 700;
    private const int Height = 500;
    private const int Columns = 200;
    private const int Rows = 150;

    /// <summary>What is promised, in pixels of the picture.</summary>
    private const double Promised = 0.01;

    private static readonly SkyDirection Place = SkyDirection.FromDegrees(217.3, 31.0);

    public static TheoryData<string, string> Pairs()
    {
        var rows = new TheoryData<string, string>();
        foreach (var chart in SkyProjection.Codes)
        {
            rows.Add(chart, "TAN-SIP");
        }

        foreach (
            var picture in (string[])
                [.. SkyProjection.Codes, "TAN-TPV", "AIT-seam", "CAR-seam", "SIP-fold"]
        )
        {
            rows.Add("TAN", picture);
        }

        rows.Add("AIT", "CAR");
        rows.Add("CAR-seam", "AIT");
        rows.Add("TAN-pole", "TAN-pole");
        rows.Add("TAN-pole", "CAR");
        rows.Add("TAN-wide", "TAN-SIP");
        rows.Add("AIT", "TAN-mirrored");
        rows.Add("ZEA", "TAN-wide");
        return rows;
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Resample_AnyChartAndPicture_PlacesAreGoodToAHundredthOfAPixel(
        string chartKind,
        string pictureKind
    )
    {
        var chart = World(chartKind, Columns, Rows, 25.0);
        var wide = chart.Matrix.Scale.Degrees * Columns > 100.0;
        var world = World(pictureKind, Width, Height, wide ? 110.0 : 14.0);
        var (across, up) = (new float[Width * Height], new float[Width * Height]);
        for (var i = 0; i < across.Length; i++)
        {
            (across[i], up[i]) = ((i % Width) + 1f, (i / Width) + 1f);
        }

        var picture = new Picture(Width, Height, across, up, across) { Coordinates = world };
        var drawn = Resampler.Resample(
            picture,
            chart,
            Columns,
            Rows,
            cancel: TestContext.Current.CancellationToken
        );

        var (covered, factor) = (0, Factor(chart, world));
        for (var i = 0; i < Columns * Rows; i++)
        {
            var at = default(PixelPosition);
            var known =
                chart.TryPixelToSky(new((i % Columns) + 1.0, (i / Columns) + 1.0), out var sky)
                && world.TrySkyToPixel(sky, out at);
            var inside =
                known
                && at is { X: > 0.5, Y: > 0.5 }
                && at.X < (Width / factor * factor) + 0.5
                && at.Y < (Height / factor * factor) + 0.5;
            var edge =
                Math.Min(Math.Abs(at.X - 0.5), Math.Abs(at.X - (Width / factor * factor) - 0.5))
                    < Promised
                || Math.Min(Math.Abs(at.Y - 0.5), Math.Abs(at.Y - (Height / factor * factor) - 0.5))
                    < Promised;
            if (!edge || !known)
            {
                Assert.True(
                    inside == drawn.Covered[i],
                    FormattableString.Invariant($"{i % Columns}, {i / Columns}: {at}")
                );
            }

            // Beyond the middles of the outermost (joined) pixels theirs is kept.
            if (
                inside
                && at.X > factor
                && at.Y > factor
                && at.X < Width - (2 * factor)
                && at.Y < Height - (2 * factor)
            )
            {
                covered++;
                Assert.Equal(at.X, drawn.Plane(0)[i], Promised * factor);
                Assert.Equal(at.Y, drawn.Plane(1)[i], Promised * factor);
            }
        }

        Assert.InRange(covered, pictureKind == "SIP-fold" ? 50 : 400, Columns * Rows);
    }

    private static int Factor(WorldCoordinates chart, WorldCoordinates picture) =>
        (int)Math.Clamp((chart.Matrix.Scale / picture.Matrix.Scale) + 1e-6, 1.0, Height);

    /// <summary>World coordinates whose pictures lie about one place, some degrees wide; the cylinders and AIT show the whole sky.</summary>
    private static WorldCoordinates World(string kind, int width, int height, double degrees)
    {
        var code = kind[..3];
        var at = kind.EndsWith("-pole", StringComparison.Ordinal)
            ? SkyDirection.FromDegrees(100.0, 89.3)
            : Place;
        var whole = code is "CAR" or "CEA" or "MER" or "AIT";
        var size =
            whole ? (kind.EndsWith("-seam", StringComparison.Ordinal) ? 362.0 : 330.0)
            : kind.EndsWith("-wide", StringComparison.Ordinal) ? 140.0
            : degrees;
        var matrix = PixelMatrix.FromPositionAngle(
            PositionAngle.FromDegrees(whole ? 0.0 : width % 360),
            Angle.FromDegrees(size / width),
            kind.EndsWith("-mirrored", StringComparison.Ordinal)
        );
        var middle = new PixelPosition((width * 0.5) + 3.25, (height * 0.5) - 1.75);
        if (kind is "TAN" or "TAN-pole" or "TAN-wide" or "TAN-mirrored")
        {
            return new TanWorldCoordinates(middle, at, matrix);
        }

        var projection = SkyProjection.Find(
            code == "SIP" ? "TAN" : code,
            code == "CEA" ? 0.7 : 0.05
        )!;

        // Cylinders lie along the equator; a seam is put through the place looked at.
        var (ra, dec) = whole
            ? (
                at.RightAscension.Degrees
                    + (kind.Contains("seam", StringComparison.Ordinal) ? 175.0 : 20.0),
                0.0
            )
            : (at.RightAscension.Degrees, at.Declination.Degrees);
        Assert.True(
            NativeSphere.TryFind(
                ra,
                dec,
                0.0,
                projection.IsZenithal ? 90.0 : 0.0,
                null,
                null,
                out var sphere
            )
        );
        return new ProjectedWorldCoordinates(
            middle,
            SkyDirection.FromDegrees(ra, dec),
            matrix,
            projection,
            sphere,
            kind == "TAN-SIP" ? Lens(2e-3)
                : kind == "SIP-fold" ? Lens(-0.6)
                : null,
            kind == "TAN-TPV" ? Plane(size) : null
        );
    }

    /// <summary>A lens that moves the corner by a share of its distance from the middle; a large one folds the plane over.</summary>
    private static SipDistortion Lens(double share)
    {
        var cubic = share / (350.0 * 350.0);
        return new(
            new(
                3,
                (p, q) =>
                    (p, q) is (3, 0) or (1, 2) ? cubic
                    : (p, q) is (2, 0) ? 1e-6
                    : 0.0
            ),
            new(
                3,
                (p, q) =>
                    (p, q) is (0, 3) or (2, 1) ? cubic
                    : (p, q) is (1, 1) ? 2e-6
                    : 0.0
            )
        );
    }

    private static TpvDistortion Plane(double size)
    {
        Span<double> longitude = stackalloc double[TpvDistortion.Terms];
        Span<double> latitude = stackalloc double[TpvDistortion.Terms];
        (longitude[1], longitude[11], longitude[5]) = (1.0, 0.01 / size / size, 0.003 / size);
        (latitude[1], latitude[7], latitude[4]) = (1.0, -0.02 / size / size, 0.003 / size);
        return new(longitude, latitude);
    }
}
