using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>How many stars to expect in a piece of sky.</summary>
/// <remarks>
/// Down to V 10 these are the catalogue's own stars, of which it holds every one. From there to V 16 the embedded counts
/// tell: to V 11 they are real ones, beyond that a model of the Milky Way; sources, and how far each can be trusted, in
/// tests/reference/star-counts. Dark clouds smaller than their steps of some degrees are not in them.
/// </remarks>
public static class StarDensity
{
    /// <summary>The V to which the counts go; stars beyond it are not counted.</summary>
    public static double FaintestMagnitude => StarCounts.Embedded.LastMagnitude;

    /// <summary>Stars between the end of the complete catalogue, V 10, and a fainter magnitude.</summary>
    /// <param name="place">Where.</param>
    /// <param name="faintestMagnitude">The faintest Johnson V that counts; taken as 16 where it is more.</param>
    /// <returns>Stars per square degree; 0 down to V 10.</returns>
    public static double BeyondCatalogue(SkyDirection place, double faintestMagnitude)
    {
        var counts = StarCounts.Embedded;
        Span<double> bins = stackalloc double[counts.Bins];
        counts.PerSquareDegree(GalacticFrame.ToGalactic(place), bins, step: 1);
        var sum = 0.0;
        for (var bin = 0; bin < bins.Length; bin++)
        {
            // Within a bin of half a magnitude the number grows evenly enough.
            var part = (faintestMagnitude - counts.FirstMagnitude) / counts.BinWidth - bin;
            sum += bins[bin] * Math.Clamp(part, 0.0, 1.0);
        }

        return sum;
    }

    /// <summary>Stars to expect inside a polygon.</summary>
    /// <param name="area">The polygon, ICRS; convex, or nearly so.</param>
    /// <param name="faintestMagnitude">The faintest Johnson V that counts; taken as 16 where it is more.</param>
    /// <returns>Their number: whole down to V 10.</returns>
    public static double Inside(SkyPolygon area, double faintestMagnitude)
    {
        ArgumentNullException.ThrowIfNull(area);
        var counts = StarCounts.Embedded;
        var real = StarCatalogue.Embedded.CountInPolygon(
            area,
            new() { FaintestMagnitude = Math.Min(faintestMagnitude, counts.FirstMagnitude) }
        );
        if (faintestMagnitude <= counts.FirstMagnitude)
        {
            return real;
        }

        // The density changes over degrees: the mean of the middle and of half way to each corner.
        var sum = BeyondCatalogue(area.Middle, faintestMagnitude);
        foreach (var corner in area.Corners)
        {
            sum += BeyondCatalogue(area.Middle.MidpointTo(corner), faintestMagnitude);
        }

        return real + (sum / (area.Corners.Count + 1) * area.Area.SquareDegrees);
    }
}
