using Framing.Sky;

namespace Framing.Catalogue.Tests.Stars;

/// <summary>
/// All embedded stars, read from the resource on its own: from the description of the layout, front to back, without the
/// program's cells, cursors and sections. Searches over it look at every star.
/// </summary>
internal static class StarScan
{
    private static readonly Lazy<List<ScannedStar>> TheStars = new(Read);

    public static IReadOnlyList<ScannedStar> Stars => TheStars.Value;

    /// <summary>Every star is looked at; left out are those farther off than the angle and 0.3 degrees more.</summary>
    /// <remarks>The fastest star goes 0.29 degrees in a hundred years.</remarks>
    public static List<ScannedStar> Near(SkyDirection centre, Angle radius)
    {
        var (x, y, z) = centre.Vector;
        var reach = radius.Radians + Angle.FromDegrees(0.3).Radians;
        var least = reach >= Math.PI ? -2.0 : Math.Cos(reach);
        var near = new List<ScannedStar>();
        foreach (var star in TheStars.Value)
        {
            var (a, b, c) = star.Direction.Vector;
            if ((a * x) + (b * y) + (c * z) >= least)
            {
                near.Add(star);
            }
        }

        return near;
    }

    private static List<ScannedStar> Read()
    {
        using var stream =
            typeof(StarCatalogue).Assembly.GetManifestResourceStream("stars.bin")
            ?? throw new InvalidOperationException("The star table is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        uint At(int section, int index) =>
            BitConverter.ToUInt32(bytes, Start(section) + (4 * index));
        int Start(int section) => (int)BitConverter.ToUInt32(bytes, 12 + (8 * section));

        var stars = new List<ScannedStar>((int)At(0, 0));
        var bands = (int)At(0, 2);
        var height = At(0, 5) / 1e6;
        var numbered = 0;
        for (var band = 0; band < bands; band++)
        {
            var cells = (int)(At(1, band + 1) - At(1, band));
            for (var cell = 0; cell < cells; cell++)
            {
                var index = (int)At(1, band) + cell;
                for (var star = (int)At(2, index); star < (int)At(2, index + 1); star++)
                {
                    var place = BitConverter.ToUInt64(bytes, Start(4) + (8 * star));
                    var up = place % (1UL << 21);
                    var along = ((place >> 21) % (1UL << 21)) + 0.5;
                    var hasNumber = (place >> 42) % 2 == 1;
                    var colour = (int)(place >> 54);
                    stars.Add(
                        new(
                            SkyDirection.FromDegrees(
                                360.0 / cells * (cell + (along / 2097152.0)),
                                Math.Clamp((band * height) - 90.0 + (up / 1e6), -90.0, 90.0)
                            ),
                            Motion(bytes, Start(5) + (4 * star), Start(8)),
                            ((int)((place >> 43) % 2048) - 200) / 100.0,
                            colour == 1023 ? null : (colour - 100) / 100.0,
                            hasNumber ? (int)At(6, numbered) : null
                        )
                    );
                    numbered += hasNumber ? 1 : 0;
                }
            }
        }

        return stars;
    }

    private static (double East, double North)? Motion(byte[] bytes, int at, int fast)
    {
        var east = BitConverter.ToInt16(bytes, at);
        var north = BitConverter.ToInt16(bytes, at + 2);
        if (east != short.MinValue)
        {
            return (east / 10.0, north / 10.0);
        }

        return north == 0
            ? null
            : (
                BitConverter.ToInt32(bytes, fast + (8 * north)) / 10.0,
                BitConverter.ToInt32(bytes, fast + (8 * north) + 4) / 10.0
            );
    }

    /// <summary>A star as the scan reads it.</summary>
    /// <param name="Direction">Place at 2000.0.</param>
    /// <param name="MotionMas">Motion in mas a year.</param>
    /// <param name="V">V.</param>
    /// <param name="Colour">B-V.</param>
    /// <param name="Hipparcos">Hipparcos number.</param>
    internal sealed record ScannedStar(
        SkyDirection Direction,
        (double East, double North)? MotionMas,
        double V,
        double? Colour,
        int? Hipparcos
    )
    {
        /// <summary>The place at an epoch: straight along the tangent, written out in components.</summary>
        public SkyDirection At(double year)
        {
            if (MotionMas is not { } motion)
            {
                return Direction;
            }

            var step = (year - 2000.0) / 1000.0 / 3600.0 * Math.PI / 180.0;
            var (sinRa, cosRa) = Math.SinCos(Direction.RightAscension.Radians);
            var (sinDec, cosDec) = Math.SinCos(Direction.Declination.Radians);
            var (east, north) = (motion.East * step, motion.North * step);
            return SkyDirection.FromVector(
                new(
                    (cosDec * cosRa) - (east * sinRa) - (north * sinDec * cosRa),
                    (cosDec * sinRa) + (east * cosRa) - (north * sinDec * sinRa),
                    sinDec + (north * cosDec)
                )
            );
        }
    }
}
