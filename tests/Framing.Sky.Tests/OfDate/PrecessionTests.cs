namespace Framing.Sky.Tests;

public sealed class PrecessionTests
{
    private static readonly TerrestrialTime Time = TerrestrialTime.FromJulianDate(
        2400000.5,
        50123.9999
    );

    [Fact]
    public void MeanObliquity_DateOfTheValidationProgram_GivesItsValue() =>
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, pfw06, epsa; its tolerance is 1e-12 rad.
        Assert.Equal(0.4091014316587367491, Precession.MeanObliquity(Time).Radians, 1e-12);

    [Fact]
    public void ToMeanOfDate_AtJ2000_IsTheOffsetOfIcrs()
    {
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, bp06, rb; its tolerance is 1e-14.
        var offset = Precession.ToMeanOfDate(TerrestrialTime.J2000);

        Assert.Equal(-0.7078368960971557145e-7, offset.X.Y, 1e-14);
        Assert.Equal(0.8056213977613185606e-7, offset.X.Z, 1e-14);
        Assert.Equal(0.3305943742989134124e-7, offset.Y.Z, 1e-14);
    }

    [Fact]
    public void ToOfDate_DateOfTheValidationProgram_GivesItsMatrixToTheErrorOfTheNutation()
    {
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, pnm06a: 1e-14 there with IAU 2000A; 0.001″ with ours.
        const double ModelError = 4.9e-9;
        var matrix = Precession.ToOfDate(Time, Nutation.At(Time));

        Assert.Equal(0.9999995832794205484, matrix.X.X, ModelError);
        Assert.Equal(0.8372382772630962111e-3, matrix.X.Y, ModelError);
        Assert.Equal(0.3639684771140623099e-3, matrix.X.Z, ModelError);
        Assert.Equal(-0.8372533744743683605e-3, matrix.Y.X, ModelError);
        Assert.Equal(0.9999996486492861646, matrix.Y.Y, ModelError);
        Assert.Equal(0.4132905944611019498e-4, matrix.Y.Z, ModelError);
        Assert.Equal(-0.3639337469629464969e-3, matrix.Z.X, ModelError);
        Assert.Equal(-0.4163377605910663999e-4, matrix.Z.Y, ModelError);
        Assert.Equal(0.9999999329094260057, matrix.Z.Z, ModelError);
    }
}
