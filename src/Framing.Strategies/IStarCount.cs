using Framing.Sky;

namespace Framing.Strategies;

/// <summary>Answers how many stars an area holds.</summary>
public interface IStarCount
{
    /// <summary>Counts the catalogue's stars inside an area.</summary>
    /// <param name="area">The area.</param>
    /// <param name="faintestMagnitude">The faintest Johnson V magnitude that counts.</param>
    /// <returns>The number of stars; beyond the catalogue's own limit fewer than the sky has.</returns>
    int Inside(SkyPolygon area, double faintestMagnitude);

    /// <summary>The stars to expect inside an area.</summary>
    /// <param name="area">The area.</param>
    /// <param name="faintestMagnitude">The faintest Johnson V magnitude that counts.</param>
    /// <returns>
    /// The catalogue's own as far as it holds them all, and beyond that the number that counts of stars by place and
    /// magnitude tell; without such counts <see cref="Inside"/>.
    /// </returns>
    double Expected(SkyPolygon area, double faintestMagnitude) => Inside(area, faintestMagnitude);
}
