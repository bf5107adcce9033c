using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Where the panels of a mosaic stand that is not a full rectangle: bands of panels, each band with a number and a start of its own.</summary>
/// <remarks>
/// Bands lie a step apart, and so do the panels that belong together within a band; a band may be broken where the outline
/// leaves it. Places are tangents in the plane of the mosaic's middle.
/// </remarks>
public sealed class PanelPlaces
{
    /// <summary>Makes the places of panels.</summary>
    /// <param name="bandsAreRows">True when the bands run along the width of the picture, false along its height.</param>
    /// <param name="places">
    /// One or more middles of panels. Each is measured from the mosaic's middle: to the right of an unmirrored picture
    /// (towards the position angle less 90°), and up. Panels of one band have the same place across it to the last digit.
    /// </param>
    /// <exception cref="ArgumentException">There is no place, or one is not a number.</exception>
    public PanelPlaces(bool bandsAreRows, IReadOnlyList<(double Right, double Up)> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        if (
            places.Count == 0
            || places.Any(place => !double.IsFinite(place.Right) || !double.IsFinite(place.Up))
        )
        {
            throw new ArgumentException("A mosaic has panels at finite places.", nameof(places));
        }

        BandsAreRows = bandsAreRows;
        Places = [.. places];
    }

    /// <summary>True when the bands run along the width of the picture.</summary>
    public bool BandsAreRows { get; }

    /// <summary>The middles of the panels, to the right of an unmirrored picture and up.</summary>
    public IReadOnlyList<(double Right, double Up)> Places { get; }

    /// <summary>The number of bands.</summary>
    public int Bands => Places.Select(Across).Distinct().Count();

    /// <summary>The most panels in one band.</summary>
    public int LongestBand => Places.GroupBy(Across).Max(band => band.Count());

    internal double Across((double Right, double Up) place) =>
        BandsAreRows ? place.Up : place.Right;
}
