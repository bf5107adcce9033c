using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>The Moon's phase.</summary>
/// <param name="Elongation">How far the Moon stands ahead of the Sun along the ecliptic: 0 new, 90° first quarter, 180° full, 270° last quarter.</param>
/// <param name="IlluminatedFraction">The lit part of the disc, 0 to 1.</param>
public readonly record struct MoonPhase(Angle Elongation, double IlluminatedFraction)
{
    /// <summary>True from new to full Moon.</summary>
    public bool IsWaxing => Elongation.Wrapped.Degrees < 180.0;

    /// <summary>The phase in words: "waxing crescent, 23 % lit".</summary>
    public string Words =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Name}, {Math.Round(100.0 * IlluminatedFraction):0} % lit"
        );

    private string Name =>
        Elongation.Wrapped.Degrees switch
        {
            < 6.0 or > 354.0 => "new",
            < 84.0 => "waxing crescent",
            <= 96.0 => "first quarter",
            < 174.0 => "waxing gibbous",
            <= 186.0 => "full",
            < 264.0 => "waning gibbous",
            <= 276.0 => "last quarter",
            _ => "waning crescent",
        };

    /// <summary>The phase at the time of a frame, as from the Earth's centre.</summary>
    /// <param name="frame">The frame of date.</param>
    /// <returns>The phase.</returns>
    public static MoonPhase At(OfDateFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var moon = MoonPlace.At(frame);
        return new(
            (Longitude(moon.Direction, frame) - Longitude(frame.Sun, frame)).Wrapped,
            moon.IlluminatedFraction
        );
    }

    private static Angle Longitude(SkyDirection direction, OfDateFrame frame)
    {
        var (sin, cos) = Math.SinCos(frame.Obliquity.Radians);
        var v = direction.Vector;
        return Angle.FromRadians(Math.Atan2((cos * v.Y) + (sin * v.Z), v.X));
    }
}
