using Framing.Sky;

namespace Framing.Nights;

/// <summary>When the Moon keeps a filter from being used.</summary>
/// <param name="Away">
/// Nothing is shot closer to the Moon than this while the Moon is up, 0 to 180°; 0 means that the Moon does not matter, 180°
/// that it has to be down.
/// </param>
/// <param name="LitFrom">The rule holds from this lit part of the disc on, 0 to 1.</param>
/// <remarks><c>default</c> is no rule. Whether the Moon is up is judged by its upper limb over a flat horizon.</remarks>
public readonly record struct MoonRule(Angle Away, double LitFrom)
{
    /// <summary>True when there is nothing to heed.</summary>
    public bool IsNone => Away <= Angle.Zero;

    /// <summary>More than 0 where the rule allows shooting, less where it forbids it; degrees.</summary>
    internal double Room(MoonSight moon, Angle separation)
    {
        if (IsNone || moon.IlluminatedFraction < LitFrom)
        {
            return 1.0;
        }

        var under = RiseAndSet.LimbAtHorizon - moon.Place.TrueAltitude - moon.SemiDiameter;
        return Math.Max(under.Degrees, (separation - Away).Degrees);
    }
}
