using Framing.Sky;

namespace Framing.Nights;

/// <summary>Chooses bright stars for aligning a mount: well placed and well spread.</summary>
public static class AlignmentChoice
{
    /// <summary>The most stars a choice is made among.</summary>
    private const int Most = 40;

    // Farther apart than this two stars are spread well enough.
    private static readonly Angle WideEnough = Angle.FromDegrees(80.0);

    // What a magnitude is worth against spread, over the three stars together.
    private const double DegreesPerMagnitude = 12.0;

    /// <summary>Chooses three stars.</summary>
    /// <param name="moment">The sky over the site.</param>
    /// <param name="stars">The stars there are.</param>
    /// <param name="limits">Where they may stand.</param>
    /// <returns>
    /// The three whose least separation is the widest, brightness weighed against it; the brightest first. Fewer where fewer
    /// stand well.
    /// </returns>
    public static IReadOnlyList<AlignmentStar> Of(
        SiteMoment moment,
        IEnumerable<BrightStar> stars,
        AlignmentLimits limits
    )
    {
        ArgumentNullException.ThrowIfNull(moment);
        ArgumentNullException.ThrowIfNull(stars);
        ArgumentNullException.ThrowIfNull(limits);
        var well = stars
            .Where(bright => bright.Magnitude <= limits.Faintest)
            .Select(bright => new AlignmentStar(
                bright,
                moment.Frame.ToOfDate(bright.Icrs),
                moment.See(bright.Icrs)
            ))
            .Where(star => StandsWell(star, moment.Site, limits))
            .OrderBy(star => star.Star.Magnitude)
            .ThenBy(star => star.Star.Name, StringComparer.Ordinal)
            .Take(Most)
            .ToList();
        if (well.Count <= 3)
        {
            return well;
        }

        var (best, score) = ((0, 1, 2), double.NegativeInfinity);
        for (var i = 0; i < well.Count; i++)
        {
            for (var j = i + 1; j < well.Count; j++)
            {
                for (var k = j + 1; k < well.Count; k++)
                {
                    var now = Score(well[i], well[j], well[k]);
                    if (now > score)
                    {
                        (best, score) = ((i, j, k), now);
                    }
                }
            }
        }

        return [well[best.Item1], well[best.Item2], well[best.Item3]];
    }

    private static bool StandsWell(
        AlignmentStar star,
        ObservingSite site,
        AlignmentLimits limits
    ) =>
        star.Place.Altitude <= limits.Highest
        && Math.Abs(star.OfDate.Declination.Radians) <= limits.FarthestDeclination.Radians
        && star.Place.Altitude >= limits.Lowest
        && star.Place.Altitude >= site.Horizon.AltitudeAt(star.Place.Azimuth) + limits.OverSkyline;

    private static double Score(AlignmentStar one, AlignmentStar two, AlignmentStar three)
    {
        var least = Math.Min(Apart(one, two), Math.Min(Apart(two, three), Apart(one, three)));
        return least
            - (
                DegreesPerMagnitude
                / 3.0
                * (one.Star.Magnitude + two.Star.Magnitude + three.Star.Magnitude)
            );
    }

    private static double Apart(AlignmentStar one, AlignmentStar two) =>
        Angle.Min(one.OfDate.SeparationTo(two.OfDate), WideEnough).Degrees;
}
