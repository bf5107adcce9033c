using Framing.Catalogue;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Counts the embedded catalogue's stars for strategies that ask.</summary>
internal sealed class CatalogueStarCount : IStarCount
{
    public int Inside(SkyPolygon area, double faintestMagnitude) =>
        StarCatalogue.Embedded.CountInPolygon(
            area,
            new StarSelection { FaintestMagnitude = faintestMagnitude }
        );

    public double Expected(SkyPolygon area, double faintestMagnitude) =>
        StarDensity.Inside(area, faintestMagnitude);
}
