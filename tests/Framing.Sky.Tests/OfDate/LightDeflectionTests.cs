using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class LightDeflectionTests
{
    private static readonly LightDeflection AwayFromX = new(new(-1.0, 0.0, 0.0), 1.0);

    [Fact]
    public void Bend_StarOfTheValidationProgram_GivesItsVector()
    {
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, ldsun; its tolerance is 1e-12. Its inputs are unit vectors to 1e-9 only.
        var bent = new LightDeflection(
            new(-0.973644023, -0.20925523, -0.0907169552),
            0.999809214
        ).Bend(new(-0.763276255, -0.608633767, -0.216735543));

        Assert.Equal(-0.7632762580731413169, bent.X, 1e-9);
        Assert.Equal(-0.6086337635262647900, bent.Y, 1e-9);
        Assert.Equal(-0.2167355419322321302, bent.Z, 1e-9);
    }

    [Theory]
    // Source: general relativity, 4GM/(c²·au) × cot(θ/2)/2 = 0.0040720″ × cot(θ/2); the edge of the Sun stands at 0.2666°.
    [InlineData(0.2666, 1.7503)]
    [InlineData(5.0, 0.09326)]
    [InlineData(45.0, 0.00983)]
    [InlineData(90.0, 0.00407)]
    public void Bend_AtADistanceFromTheSun_IsAwayFromItByTheKnownAngle(
        double degrees,
        double arcseconds
    )
    {
        var (sin, cos) = Math.SinCos(Angle.FromDegrees(degrees).Radians);
        var bent = SkyDirection.FromVector(AwayFromX.Bend(new(cos, sin, 0.0)));

        Assert.Equal(degrees + (arcseconds / 3600.0), bent.RightAscension.Degrees, 0.0001 / 3600.0);
        Assert.Equal(0.0, bent.Declination.Degrees, 1e-12);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Straighten_OfABentDirection_LeadsBack(SkyDirection star)
    {
        var back = AwayFromX.Straighten(AwayFromX.Bend(star.Vector));

        Assert.InRange((back - star.Vector).Length, 0.0, 1e-15);
    }
}
