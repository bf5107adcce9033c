namespace Framing.Sky.Tests;

/// <summary>Batches say what the single calls say, point by point, whatever the projection and the distortion.</summary>
public sealed class PointBatchesTests
{
    private const int Points = 800;

    public static TheoryData<string, string> Worlds()
    {
        var rows = new TheoryData<string, string>();
        foreach (var code in SkyProjection.Codes)
        {
            foreach (var distortion in new[] { "none", "SIP", "TPV" })
            {
                rows.Add(code, distortion);
            }
        }

        rows.Add("plain", "none");
        rows.Add("FK4", "none");
        return rows;
    }

    [Theory]
    [MemberData(nameof(Worlds))]
    public void PixelToSky_ManyPoints_SayWhatSingleOnesSay(string code, string distortion)
    {
        foreach (var (world, size) in Some(code, distortion))
        {
            var random = new Random(5);
            var (x, y) = (new double[Points], new double[Points]);
            for (var i = 0; i < Points; i++)
            {
                x[i] = size * ((random.NextDouble() * 1.4) - 0.2);
                y[i] = size * ((random.NextDouble() * 1.4) - 0.2);
            }

            (x[0], y[0]) = (world.ReferencePixel.X, world.ReferencePixel.Y);
            (x[700], x[701], y[702], x[703], y[Points - 1]) = (
                double.NaN,
                double.PositiveInfinity,
                double.NegativeInfinity,
                1e160,
                -1e120
            );
            var (ra, dec) = (new double[Points], new double[Points]);
            var failures = new MapFailure[Points];
            Array.Fill(failures, MapFailure.NotConverged);
            var failed = world.PixelToSky(x, y, ra, dec, failures);

            Assert.Equal(failures.Count(failure => failure != MapFailure.None), failed);
            for (var i = 0; i < Points; i++)
            {
                Assert.Equal(
                    world.PixelToSky(new PixelPosition(x[i], y[i]), out var single),
                    failures[i]
                );
                if (failures[i] != MapFailure.None)
                {
                    Assert.True(double.IsNaN(ra[i]) && double.IsNaN(dec[i]));
                    continue;
                }

                Assert.True(ra[i] is >= 0.0 and < 360.0 && Math.Abs(dec[i]) <= 90.0);
                Assert.Equal(
                    0.0,
                    SkyDirection.FromDegrees(ra[i], dec[i]).SeparationTo(single).Arcseconds,
                    1e-9 * Condition(world, new(x[i], y[i])).There
                );
            }
        }
    }

    [Theory]
    [MemberData(nameof(Worlds))]
    public void SkyToPixel_ManyPoints_SayWhatSingleOnesSay(string code, string distortion)
    {
        foreach (var (world, size) in Some(code, distortion))
        {
            var random = new Random(6);
            var (ra, dec) = (new double[Points], new double[Points]);
            for (var i = 0; i < Points; i++)
            {
                if (
                    i % 2 == 0
                    && world.TryPixelToSky(
                        new(random.NextDouble() * size, random.NextDouble() * size),
                        out var direction
                    )
                )
                {
                    ra[i] = direction.RightAscension.Degrees;
                    dec[i] = direction.Declination.Degrees;
                }
                else
                {
                    ra[i] = (random.NextDouble() * 1440.0) - 720.0;
                    dec[i] = 180.0 / Math.PI * Math.Asin((random.NextDouble() * 2.0) - 1.0);
                }
            }

            (ra[700], dec[701], dec[702], ra[703]) = (double.NaN, 90.001, double.NaN, 1e300);
            (dec[704], dec[705]) = (90.0, -90.0);
            var (x, y) = (new double[Points], new double[Points]);
            var failures = new MapFailure[Points];
            var failed = world.SkyToPixel(ra, dec, x, y, failures);

            Assert.Equal(failures.Count(failure => failure != MapFailure.None), failed);
            for (var i = 0; i < Points; i++)
            {
                var single = default(PixelPosition);
                var expected =
                    double.IsFinite(ra[i]) && Math.Abs(dec[i]) <= 90.0
                        ? world.SkyToPixel(SkyDirection.FromDegrees(ra[i], dec[i]), out single)
                        : MapFailure.OffTheMap;
                Assert.Equal(expected, failures[i]);
                if (expected != MapFailure.None)
                {
                    Assert.True(double.IsNaN(x[i]) && double.IsNaN(y[i]));
                    continue;
                }

                Assert.Equal(
                    0.0,
                    double.Hypot(x[i] - single.X, y[i] - single.Y),
                    1e-9 * Condition(world, single).Back
                );
            }
        }
    }

    [Theory]
    [MemberData(nameof(Worlds))]
    public void PixelToPixel_ManyPoints_GoOverTheSky(string code, string distortion)
    {
        var from = Some("plain", "none")[0].World;
        foreach (var (world, size) in Some(code, distortion))
        {
            double[] x = [.. Enumerable.Range(0, 300).Select(i => size * i / 300.0), double.NaN];
            double[] y = [.. Enumerable.Range(0, 301).Select(i => size * (i * 7 % 300) / 300.0)];
            var (otherX, otherY) = (new double[301], new double[301]);
            var failed = from.PixelToPixel(x, y, world, otherX, otherY);

            Assert.Equal(otherX.Count(double.IsNaN), failed);
            for (var i = 0; i < x.Length; i++)
            {
                var single = default(PixelPosition);
                var found =
                    from.TryPixelToSky(new(x[i], y[i]), out var direction)
                    && world.TrySkyToPixel(direction, out single);
                Assert.Equal(found, !double.IsNaN(otherX[i]) && !double.IsNaN(otherY[i]));
                if (found)
                {
                    Assert.Equal(
                        0.0,
                        double.Hypot(otherX[i] - single.X, otherY[i] - single.Y),
                        1e-9 * Condition(world, single).Back
                    );
                }
            }
        }
    }

    [Fact]
    public void PixelToSky_AnyPlaceInABatch_HasTheSameAnswer()
    {
        foreach (var (world, size) in Some("TAN", "SIP"))
        {
            double[] x = [.. Enumerable.Range(0, 600).Select(i => size * i / 600.0)];
            double[] y = [.. Enumerable.Range(0, 600).Select(i => size * (i * 7 % 600) / 600.0)];
            var (ra, dec, failures) = (new double[600], new double[600], new MapFailure[600]);
            world.PixelToSky(x, y, ra, dec, failures);
            for (var count = 1; count < 20; count++)
            {
                var (partRa, partDec) = (new double[count], new double[count]);
                world.PixelToSky(
                    x.AsSpan(250, count),
                    y.AsSpan(250, count),
                    partRa,
                    partDec,
                    failures.AsSpan(0, count)
                );
                Assert.Equal(ra[250..(250 + count)], partRa);
                Assert.Equal(dec[250..(250 + count)], partDec);
            }
        }
    }

    [Fact]
    public void Batches_OnceWarm_AllocateNothing()
    {
        var (world, size) = Some("TAN", "SIP")[0];
        var (x, y) = (new double[Points], new double[Points]);
        Array.Fill(x, size / 3.0);
        Array.Fill(y, size / 4.0);
        var (ra, dec, failures) = (new double[Points], new double[Points], new MapFailure[Points]);
        Both();
        var before = GC.GetAllocatedBytesForCurrentThread();
        Both();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(size / 3.0, x[^1], 1e-9);

        void Both()
        {
            world.PixelToSky(x, y, ra, dec, failures);
            world.SkyToPixel(ra, dec, x, y, failures);
        }
    }

    [Fact]
    public void Batches_OfDifferentLengths_Refused()
    {
        var (world, _) = Some("plain", "none")[0];
        Assert.Throws<ArgumentException>(() =>
            world.PixelToSky(
                new double[3],
                new double[3],
                new double[3],
                new double[2],
                new MapFailure[3]
            )
        );
        Assert.Equal(0, world.PixelToSky([], [], [], [], []));
        Assert.Equal(0, world.SkyToPixel([], [], [], [], []));
    }

    /// <summary>Worlds of both parities, somewhere, at a pole and across right ascension 0h, with the size of their pictures.</summary>
    private static List<(WorldCoordinates World, double Size)> Some(string code, string distortion)
    {
        var all = code is "CAR" or "CEA" or "MER" or "AIT";
        var (size, field) = (1000.0, all ? 300.0 : 60.0);
        (double Ra, double Dec)[] places =
        [
            (123.0, 37.0),
            (0.01, -12.0),
            (75.0, all ? 0.0 : 90.0),
            (200.0, all ? 0.0 : -89.99),
        ];
        var worlds = new List<(WorldCoordinates, double)>();
        foreach (var (ra, dec) in places)
        {
            foreach (var mirrored in new[] { false, true })
            {
                var at = SkyDirection.FromDegrees(ra, dec);
                var matrix = PixelMatrix.FromPositionAngle(
                    PositionAngle.FromDegrees(ra),
                    Angle.FromDegrees(field / size),
                    mirrored
                );
                var middle = new PixelPosition(480.25, 510.5);
                if (code is "plain" or "FK4")
                {
                    var plain = new TanWorldCoordinates(middle, at, matrix);
                    worlds.Add(
                        (
                            code == "plain"
                                ? plain
                                : EquatorialFrame.Fk4(1950.0, 1975.0).ToIcrs(plain),
                            size
                        )
                    );
                    continue;
                }

                var projection = SkyProjection.Find(code, code == "CEA" ? 0.6 : 0.1, -0.2)!;
                var native = projection.IsZenithal ? 90.0 : 0.0;
                Assert.True(NativeSphere.TryFind(ra, dec, 0.0, native, null, null, out var sphere));
                worlds.Add(
                    (
                        new ProjectedWorldCoordinates(
                            middle,
                            at,
                            matrix,
                            projection,
                            sphere,
                            distortion == "SIP" ? Lens() : null,
                            distortion == "TPV" ? Plane(field) : null,
                            new(0.01, -0.02)
                        ),
                        size
                    )
                );
            }
        }

        return worlds;
    }

    /// <summary>By how much a small error grows at a place, against the place of the reference; at least 1.</summary>
    private static (double There, double Back) Condition(WorldCoordinates world, PixelPosition at)
    {
        // Without a matrix the place lies at the edge of the map.
        const double edge = 1e3;
        if (!world.TryMatrixAt(at, out var here))
        {
            return (edge, edge);
        }

        var (most, least) = Stretches(here);
        var (usualMost, usualLeast) = Stretches(world.Matrix);

        // Pixels themselves are rounded, far out more than near.
        var far = 1.0 + (double.Hypot(at.X, at.Y) / 1e3);
        var back = far * usualLeast / least;
        return (
            Math.Max(1.0, most / usualMost),
            back > 1.0 ? back
            : double.IsNaN(back) ? edge
            : far
        );
    }

    /// <summary>The largest and smallest stretch of a matrix (its singular values).</summary>
    private static (double Most, double Least) Stretches(PixelMatrix m)
    {
        var sum = double.Hypot(m.Cd11 + m.Cd22, m.Cd21 - m.Cd12);
        var difference = double.Hypot(m.Cd11 - m.Cd22, m.Cd21 + m.Cd12);
        var most = (sum + difference) / 2.0;
        return (most, Math.Abs(m.Determinant) / most);
    }

    private static SipDistortion Lens() =>
        new(
            new(3, (p, q) => p + q >= 2 ? 4e-3 * (1 + p) / Math.Pow(1000.0, p + q - 1) : 0.0),
            new(4, (p, q) => p + q >= 2 ? -3e-3 * (1 + q) / Math.Pow(1000.0, p + q - 1) : 0.0)
        );

    private static TpvDistortion Plane(double field)
    {
        Span<double> longitude = stackalloc double[TpvDistortion.Terms];
        Span<double> latitude = stackalloc double[TpvDistortion.Terms];
        (longitude[1], longitude[3], longitude[5], longitude[11]) = (
            1.01,
            0.002,
            0.01 / field,
            0.01 / field / field
        );
        (latitude[0], latitude[1], latitude[2], latitude[17]) = (
            0.01,
            0.98,
            0.02,
            0.01 / Math.Pow(field, 4)
        );
        return new(longitude, latitude);
    }
}
