using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>Counts the stars of shared strips for strategies that ask: of the grid that would be needed, laid on the sky.</summary>
/// <param name="request">What is asked.</param>
/// <param name="angle">The camera angle of the grid.</param>
internal sealed class SharedStarsAid(FramingRequest request, PositionAngle angle) : ISharedStars
{
    public double Fewest(PanelOverlap overlap, double faintestMagnitude)
    {
        var fit = GridAtAngle.Of(request, overlap, angle);
        if (fit.Panels > Mosaic.MostPanels)
        {
            // No plan allows so many; the framing says so.
            return double.PositiveInfinity;
        }

        var strips = SharedStrip.Of(LaidMosaic.Of(request, overlap, fit));
        return strips.Count == 0
            ? double.PositiveInfinity
            : strips.Min(strip =>
                strip.Corners.Count == 0
                    ? 0.0
                    : request.Stars.Expected(new SkyPolygon(strip.Corners), faintestMagnitude)
            );
    }
}
