using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>
/// Answers how likely a mosaic is to close, for strategies that ask: the grid it would need, laid on the sky and drawn many
/// times.
/// </summary>
/// <remarks>
/// All answers use the same random numbers, so that a little more overlap never looks worse by chance. Grids of more than
/// <see cref="MostDrawn"/> panels are answered by the closed form, which knows nothing of a camera left alone.
/// </remarks>
internal sealed class GapChanceAid(FramingRequest request, PositionAngle angle) : IGapChance
{
    /// <summary>The most panels of a grid that is drawn.</summary>
    public const int MostDrawn = 100;

    /// <summary>Not the seed of the odds that a plan reports: those look afresh at what was chosen here.</summary>
    private const ulong Seed = 2;

    /// <summary>Panels drawn for one answer, over all trials.</summary>
    private const int Draws = 120_000;

    public double NoGap(PanelOverlap overlap)
    {
        var fit = GridAtAngle.Of(request, overlap, angle);
        if (fit.Panels == 1)
        {
            return 1.0;
        }

        if (fit.Panels > MostDrawn || !fit.WithinMostPanels)
        {
            return GapChance.OfGrid(
                request.Rig.Field,
                overlap,
                fit.Columns,
                fit.Rows,
                DrawnClosing.Own(request)
            );
        }

        var mosaic = LaidMosaic.Of(request, overlap, fit);
        var trials = Math.Clamp(Draws / (int)fit.Panels, 4_000, 10_000);
        return ClosingTrials
            .Of(
                mosaic,
                DrawnClosing.Own(request),
                settings: DrawnClosing.Settings(request, trials, Seed)
            )
            .ChanceNoGap;
    }
}
