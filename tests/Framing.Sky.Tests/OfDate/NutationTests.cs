namespace Framing.Sky.Tests;

public sealed class NutationTests
{
    [Fact]
    public void Terms_AsWritten_AreAllSeventySeven() => Assert.Equal(77, NutationTerms.All.Length);

    [Fact]
    public void At_DateOfTheValidationProgram_GivesItsValues()
    {
        // Source: ERFA 2.0.0, validation program t_erfa_c.c, nut00b; its tolerance is 1e-13 rad.
        var nutation = Nutation.At(TerrestrialTime.FromJulianDate(2400000.5, 53736.0));

        Assert.Equal(-0.9632552291148362783e-5, nutation.InLongitude.Radians, 1e-13);
        Assert.Equal(0.4063197106621159367e-4, nutation.InObliquity.Radians, 1e-13);
    }
}
