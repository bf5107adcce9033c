namespace Framing.Nights;

/// <summary>The air at the observer, which bends light.</summary>
/// <remarks>Refraction grows with pressure over absolute temperature (Meeus, Astronomical Algorithms 1998, chapter 16).</remarks>
public sealed record AirConditions
{
    private const double UsualHectopascals = 1010.0;
    private const double UsualCelsius = 10.0;
    private const double ZeroCelsiusInKelvin = 273.0;

    /// <summary>Makes the air of a place.</summary>
    /// <param name="pressureHectopascals">Pressure at the observer, not reduced to the sea, 0 to 1200 hPa; 0 is no air.</param>
    /// <param name="temperatureCelsius">Temperature, -100 to +70 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public AirConditions(double pressureHectopascals, double temperatureCelsius)
    {
        if (pressureHectopascals is not (>= 0.0 and <= 1200.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(pressureHectopascals),
                pressureHectopascals,
                "Air pressure lies between 0 and 1200 hPa."
            );
        }

        if (temperatureCelsius is not (>= -100.0 and <= 70.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(temperatureCelsius),
                temperatureCelsius,
                "Air temperature lies between -100 and +70 °C."
            );
        }

        PressureHectopascals = pressureHectopascals;
        TemperatureCelsius = temperatureCelsius;
    }

    /// <summary>The air for which refraction is usually given: 1010 hPa, 10 °C.</summary>
    public static AirConditions Usual { get; } = new(UsualHectopascals, UsualCelsius);

    /// <summary>Pressure at the observer in hPa.</summary>
    public double PressureHectopascals { get; }

    /// <summary>Temperature in °C.</summary>
    public double TemperatureCelsius { get; }

    /// <summary>How much more this air bends light than the usual air does: 1 at 1010 hPa and 10 °C.</summary>
    public double Strength =>
        PressureHectopascals
        / UsualHectopascals
        * ((ZeroCelsiusInKelvin + UsualCelsius) / (ZeroCelsiusInKelvin + TemperatureCelsius));
}
