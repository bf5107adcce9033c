using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>
/// Answers how likely a mosaic is to close, for strategies that ask: the grid it would need, laid on the sky and drawn many
/// times.
/// </summary>
/// <remarks>
/// <para>
/// All answers use the same random numbers, so that a little more overlap never looks worse by chance; 40,000 trials leave
/// 0.05 % of doubt about 99 %. Larger grids are drawn less often.
/// </para>
/// <para>
/// Grids of more than <see cref="MostDrawn"/> panels are answered by the closed form. It knows nothing of a camera left
/// alone, nor that panels across a corner cover much of what a wrong camera angle opens, which makes its answer too low.
/// </para>
/// </remarks>
/// <param name="request">What is asked.</param>
/// <param name="angle">The camera angle of the grid.</param>
/// <param name="roughly">True for the closed form alone: enough while the camera angle is still open.</param>
internal sealed class GapChanceAid(FramingRequest request, PositionAngle angle, bool roughly)
    : IGapChance
{
    /// <summary>The most panels of a grid that is drawn.</summary>
    public const int MostDrawn = 1_000;

    /// <summary>Not the seed of the odds that a plan reports: those look afresh at what was chosen here.</summary>
    private const ulong Seed = 2;

    /// <summary>Panels drawn for one answer, over all trials: 40,000 mosaics of 50 panels.</summary>
    private const int Draws = 2_000_000;

    private readonly ClosingSeries series = new(DrawnClosing.Own(request), request.ChanceNoGap);

    public double NoGap(PanelOverlap overlap)
    {
        var fit = GridAtAngle.Of(request, overlap, angle);
        if (fit.Panels == 1)
        {
            return 1.0;
        }

        return roughly || fit.Panels > MostDrawn || !fit.WithinMostPanels
            ? GapChance.OfGrid(
                request.Rig.Field,
                overlap,
                fit.Columns,
                fit.Rows,
                DrawnClosing.Own(request)
            )
            : series.ChanceNoGap(
                LaidMosaic.Of(request, overlap, fit),
                DrawnClosing.Settings(
                    request,
                    Math.Clamp(Draws / (int)fit.Panels, 4_000, 40_000),
                    Seed
                )
            );
    }
}
