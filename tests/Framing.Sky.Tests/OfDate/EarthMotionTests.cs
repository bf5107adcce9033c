namespace Framing.Sky.Tests;

public sealed class EarthMotionTests
{
    [Fact]
    public void At_DateOfTheValidationProgram_GivesItsVectorsToTheStatedError()
    {
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, epv00 (full series, au and au per day).
        var motion = EarthMotion.At(TerrestrialTime.FromJulianDate(2400000.5, 53411.52501161));
        var fromSun = new Vector3D(
            -0.7757238809297706813,
            0.5598052241363340596,
            0.2426998466481686993
        );
        var velocity = new Vector3D(
            -0.1091874268116823295e-1,
            -0.1246525461732861538e-1,
            -0.5404773180966231279e-2
        );
        var velocityFromSun = new Vector3D(
            -0.1091891824147313846e-1,
            -0.1247187268440845008e-1,
            -0.5407569418065039061e-2
        );

        const double KilometresPerAu = 149_597_870.7;
        const double MetresPerSecond = KilometresPerAu * 1000.0 / (365.25 * 86400.0);
        var off = (motion.FromSun - fromSun).Length * KilometresPerAu;
        var offVelocity = (motion.Velocity - (velocity * 365.25)).Length * MetresPerSecond;
        var sunVelocity = (velocity - velocityFromSun) * 365.25;
        var offSun = (motion.SunVelocity - sunVelocity).Length * MetresPerSecond;
        Assert.InRange(off, 0.0, 2000.0);
        Assert.InRange(offVelocity, 0.0, 1.0);
        Assert.InRange(offSun, 0.0, 1.0);
    }
}
