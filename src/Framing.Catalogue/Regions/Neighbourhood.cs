using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>A quick look at whether something can touch a region, so that most objects need no closer one.</summary>
internal readonly struct Neighbourhood(SkyRegion region)
{
    // The catalogued place of an object and the middle of its extent are at most half a degree apart.
    private const double LargestShiftDegrees = 1.0;

    private readonly double rightAscension = region.Middle.RightAscension.Degrees;
    private readonly double declination = region.Middle.Declination.Degrees;
    private readonly double radius = region.Radius.Degrees + LargestShiftDegrees;

    /// <summary>False only if an object is certainly outside.</summary>
    /// <param name="rightAscensionDegrees">Right ascension of its place.</param>
    /// <param name="declinationDegrees">Declination of its place.</param>
    /// <param name="reachArcminutes">How far it reaches.</param>
    public bool MayHold(
        double rightAscensionDegrees,
        double declinationDegrees,
        double reachArcminutes
    )
    {
        var reach = radius + (reachArcminutes / 60.0);
        if (Math.Abs(declinationDegrees - declination) > reach)
        {
            return false;
        }

        // The haversine of the distance, without its first term: never too large.
        const double Half = Math.PI / 360.0;
        var across = Math.Sin((rightAscensionDegrees - rightAscension) * Half);
        var limit = Math.Sin(Math.Min(reach, 180.0) * Half);
        return Math.Cos(declinationDegrees * 2.0 * Half)
                * Math.Cos(declination * 2.0 * Half)
                * across
                * across
            <= limit * limit;
    }
}
