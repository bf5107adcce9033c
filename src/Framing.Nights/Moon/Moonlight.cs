using Framing.Sky;

namespace Framing.Nights;

/// <summary>How much the Moon brightens the sky at a place.</summary>
/// <param name="Factor">How many times brighter the sky is than without the Moon, 1 or more.</param>
/// <remarks>
/// <para>
/// Krisciunas and Schaefer 1991, Publ. Astron. Soc. Pacific 103, 1033: a fit to measurements in V in clear air, whose authors
/// give it an error of 8 % to 23 % of the moonlight (formulas from memory). Haze, snow or cloud make it much worse.
/// </para>
/// <para>Narrow filters see the same factor in the light that they let pass, but the sky without the Moon is darker in most of them.</para>
/// </remarks>
public readonly record struct Moonlight(double Factor)
{
    /// <summary>Loss in V at a dark site, magnitudes for each airmass (their value for a high mountain).</summary>
    private const double Extinction = 0.172;

    /// <summary>How many magnitudes brighter the sky is.</summary>
    public double Magnitudes => 2.5 * Math.Log10(Factor);

    /// <summary>The moonlight at a place.</summary>
    /// <param name="moon">The Moon.</param>
    /// <param name="place">The place.</param>
    /// <param name="separation">How far it stands from the Moon, as the observer sees both.</param>
    /// <param name="darkMagnitude">The moonless sky overhead, magnitudes (V) in a square second of arc.</param>
    /// <returns>The moonlight; none when either is below the horizon.</returns>
    public static Moonlight At(
        in MoonSight moon,
        in HorizontalPlace place,
        Angle separation,
        double darkMagnitude
    )
    {
        if (moon.Place.Altitude <= Angle.Zero || place.Altitude <= Angle.Zero)
        {
            return new(1.0);
        }

        var phase = double.RadiansToDegrees(
            Math.Acos(Math.Clamp((2.0 * moon.IlluminatedFraction) - 1.0, -1.0, 1.0))
        );
        var apart = separation.Degrees;
        var light = Math.Pow(
            10.0,
            -0.4 * (3.84 + (0.026 * phase) + (4e-9 * phase * phase * phase * phase))
        );
        var cos = Math.Cos(separation.Radians);
        var scattered =
            (Math.Pow(10.0, 5.36) * (1.06 + (cos * cos)))
            + (
                apart >= 10.0
                    ? Math.Pow(10.0, 6.15 - (apart / 40.0))
                    : 6.2e7 / Math.Max(0.0625, apart * apart)
            );
        var air = Air(place.Altitude);
        var moonlight =
            scattered
            * light
            * Math.Pow(10.0, -0.4 * Extinction * Air(moon.Place.Altitude))
            * (1.0 - Math.Pow(10.0, -0.4 * Extinction * air));
        var overhead = 34.08 * Math.Exp(20.7233 - (0.92104 * darkMagnitude));
        var dark = overhead * air * Math.Pow(10.0, -0.4 * Extinction * (air - 1.0));
        return new(1.0 + (moonlight / dark));
    }

    // Their airmass for light that is scattered in the sky.
    private static double Air(Angle altitude)
    {
        var cos = Math.Cos(altitude.Radians);
        return 1.0 / Math.Sqrt(1.0 - (0.96 * cos * cos));
    }
}
