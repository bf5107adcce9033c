using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>Warns of the Sun.</summary>
public static class SunCaution
{
    /// <summary>Nothing is pointed closer to the Sun than this while it is up.</summary>
    public static Angle Near { get; } = Angle.FromDegrees(20.0);

    // The Sun's limb shows, and its light burns, down to here.
    private static readonly Angle Set = Angle.FromDegrees(-0.833);

    /// <summary>The warning for a place.</summary>
    /// <param name="separation">How far it stands from the Sun's centre.</param>
    /// <param name="sunAltitude">True altitude of the Sun; null where no site is known.</param>
    /// <returns>One sentence; null when there is nothing to warn of.</returns>
    public static string? Of(Angle separation, Angle? sunAltitude) =>
        separation < Near && (sunAltitude is null || sunAltitude > Set)
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"The Sun stands {separation.Degrees:0}° from here{(sunAltitude is null ? "" : " and is up")}: never point unfiltered optics there."
            )
            : null;
}
