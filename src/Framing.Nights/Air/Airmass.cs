using Framing.Sky;

namespace Framing.Nights;

/// <summary>Through how much air a place is seen, in units of the air overhead.</summary>
/// <remarks>
/// Kasten and Young 1989, Applied Optics 28, 4735 (coefficients from memory; within 0.2 % of a density integral through the
/// standard atmosphere at 5°).
/// </remarks>
public static class Airmass
{
    /// <summary>The airmass at an altitude.</summary>
    /// <param name="apparent">Apparent altitude, -90° to +90°.</param>
    /// <returns>The airmass, 1 at the zenith, 38 at the horizon; null below the horizon.</returns>
    public static double? At(Angle apparent)
    {
        var h = apparent.Degrees;
        return h < 0.0
            ? null
            : 1.0 / (Math.Sin(apparent.Radians) + (0.50572 * Math.Pow(h + 6.07995, -1.6364)));
    }
}
