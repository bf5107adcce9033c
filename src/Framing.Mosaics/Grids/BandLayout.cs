namespace Framing.Mosaics;

/// <summary>Panels in bands that follow an outline, laid out at one angle.</summary>
/// <param name="BandsAreRows">True when the bands run along the width of the picture.</param>
/// <param name="Places">The middles of the panels: along the bands, and across them.</param>
/// <param name="Margin">The margin left on the tightest side, a tangent.</param>
internal sealed record BandLayout(
    bool BandsAreRows,
    IReadOnlyList<(double Along, double Across)> Places,
    double Margin
)
{
    /// <summary>Of two layouts the one with fewer panels, then the one with the larger margin; null loses.</summary>
    public static BandLayout? Better(BandLayout? one, BandLayout? other)
    {
        if (one is null || other is null)
        {
            return one ?? other;
        }

        // A margin larger by less than a millionth is rounding: the first stays.
        return
            other.Places.Count < one.Places.Count
            || (
                other.Places.Count == one.Places.Count
                && other.Margin > one.Margin + (1e-6 * Math.Abs(one.Margin))
            )
            ? other
            : one;
    }

    public PanelPlaces ToPlaces() =>
        new(
            BandsAreRows,
            [
                .. Places.Select(place =>
                    BandsAreRows ? (place.Along, place.Across) : (place.Across, place.Along)
                ),
            ]
        );
}
