using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class AberrationTests
{
    private static readonly Vector3D Velocity = new(
        2.1044018893653786e-5,
        -8.9108923304429319e-5,
        -3.8633714797716569e-5
    );

    [Fact]
    public void Shift_StarOfTheValidationProgram_GivesItsVector()
    {
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, ab: 1e-12 there; the Sun's potential, left out here, is 2e-12.
        var shifted = Aberration.Shift(
            new(-0.76321968546737951, -0.60869453983060384, -0.21676408580639883),
            Velocity
        );

        Assert.Equal(-0.7631631094219556269, shifted.X, 3e-12);
        Assert.Equal(-0.6087553082505590832, shifted.Y, 3e-12);
        Assert.Equal(-0.2167926269368471279, shifted.Z, 3e-12);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Shift_WithTheOppositeVelocityAfterwards_LeadsBack(SkyDirection star)
    {
        var there = Aberration.Shift(star.Vector, Velocity);
        var back = Aberration.Shift(there, -Velocity);

        Assert.Equal(1.0, there.Length, 1e-15);
        Assert.InRange((back - star.Vector).Length, 0.0, 1e-15);
    }

    [Fact]
    public void Shift_AcrossTheMotion_IsTheSpeedAsAnAngle()
    {
        // Special relativity: at right angles the star moves by the arc sine of v/c.
        var shifted = Aberration.Shift(new(0.0, 0.0, 1.0), new(1e-4, 0.0, 0.0));

        Assert.Equal(1e-4, shifted.X, 1e-18);
        Assert.Equal(Math.Sqrt(1.0 - 1e-8), shifted.Z, 1e-15);
    }
}
