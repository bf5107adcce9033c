namespace Framing.Sky.Tests;

public sealed class DistortionTests
{
    private static readonly SipDistortion Lens = new(
        new(
            3,
            (p, q) =>
                (p, q) is (3, 0) or (1, 2) ? 1.35e-10
                : p + q == 2 ? 8e-8
                : 0.0
        ),
        new(
            3,
            (p, q) =>
                (p, q) is (0, 3) or (2, 1) ? 1.35e-10
                : p + q == 2 ? -5e-8
                : 0.0
        )
    );

    [Fact]
    public void Undo_WithinThePicture_ComesBack()
    {
        for (var u = -3000.0; u <= 3000.0; u += 375.0)
        {
            for (var v = -2000.0; v <= 2000.0; v += 250.0)
            {
                var (imageU, imageV) = Lens.Apply(u, v);

                Assert.Equal(MapFailure.None, Lens.Undo(imageU, imageV, out var place));
                Assert.Equal(u, place.Xi, 1e-9);
                Assert.Equal(v, place.Eta, 1e-9);
            }
        }
    }

    /// <summary>u + k u³ with k below 0 turns back at u² = -1/(3k): beyond that image nothing lies.</summary>
    [Fact]
    public void Undo_BeyondTheFold_SaysThatItDoesNotConverge()
    {
        var barrel = new SipDistortion(
            new(3, (p, q) => (p, q) is (3, 0) or (1, 2) ? -1e-8 : 0.0),
            new(3, (p, q) => (p, q) is (0, 3) or (2, 1) ? -1e-8 : 0.0)
        );
        var fold = Math.Sqrt(1.0 / 3e-8);
        var farthest = barrel.Apply(fold, 0.0).U;

        Assert.Equal(MapFailure.None, barrel.Undo(farthest * 0.999, 0.0, out var near));
        Assert.InRange(near.Xi, 0.9 * fold, fold);
        Assert.Equal(MapFailure.NotConverged, barrel.Undo(farthest * 1.001, 0.0, out _));
        Assert.Equal(MapFailure.NotConverged, barrel.Undo(farthest * 30.0, farthest, out _));
    }

    [Fact]
    public void Undo_ReverseTermsThatLeadAstray_AreOnlyAStart()
    {
        var astray = new SipDistortion(
            Lens.A,
            Lens.B,
            new(2, (p, q) => p + q == 2 ? 1e-2 : 0.0),
            new(2, (p, q) => p + q == 2 ? -1e-2 : 0.0)
        );
        var (imageU, imageV) = Lens.Apply(2900.0, -1700.0);

        Assert.Equal(MapFailure.None, astray.Undo(imageU, imageV, out var place));
        Assert.Equal(2900.0, place.Xi, 1e-9);
        Assert.Equal(-1700.0, place.Eta, 1e-9);
    }

    /// <summary>TPV registry: term 7 of an axis is the cube of the axis's own coordinate, 8 its square times the other, 11 r³.</summary>
    [Fact]
    public void Apply_TpvTerms_ArePowersOfTheOwnAxisFirst()
    {
        Span<double> longitude = stackalloc double[TpvDistortion.Terms];
        Span<double> latitude = stackalloc double[TpvDistortion.Terms];
        (longitude[1], longitude[8], longitude[11]) = (1.0, 0.5, 0.25);
        (latitude[1], latitude[7], latitude[39]) = (1.0, 2.0, 3.0);

        var (xi, eta) = new TpvDistortion(longitude, latitude).Apply(0.3, 0.4);

        Assert.Equal(0.3 + (0.5 * 0.09 * 0.4) + (0.25 * 0.125), xi, 1e-15);
        Assert.Equal(0.4 + (2.0 * 0.064) + (3.0 * Math.Pow(0.5, 7)), eta, 1e-15);
    }

    [Fact]
    public void World_ReversedBinnedCropped_ShowsTheSamePlaces()
    {
        var world = ProjectedWorldCoordinates.TanSip(
            new(3124.5, 2088.5),
            SkyDirection.FromDegrees(314.0, 44.0),
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(30.0),
                Angle.FromArcseconds(2.5852),
                mirrored: false
            ),
            Lens
        );
        var expected = world.PixelToSky(new(101.0, 57.0));

        Assert.InRange(Off(world.WithRowsReversed(4176), new(101.0, 4177.0 - 57.0)), 0.0, 1e-8);
        Assert.InRange(Off(world.Binned(4.0), new(25.625, 14.625)), 0.0, 1e-8);
        Assert.InRange(Off(world.Cropped(100, 50), new(1.0, 7.0)), 0.0, 1e-8);
        Assert.Equal(2.5852, world.Matrix.Scale.Arcseconds, 1e-7);

        double Off(WorldCoordinates changed, PixelPosition pixel) =>
            changed.PixelToSky(pixel).SeparationTo(expected).Arcseconds;
    }
}
