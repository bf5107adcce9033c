using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Lays panels in bands along an outline: each band is as long as the outline takes up in it, and starts where it likes.</summary>
/// <remarks>
/// <para>
/// Bands stand a step apart, rows or columns, and the whole stack is tried at several heights. Within a band the fewest
/// panels cover what the outline with its margin takes up over the whole breadth of the band, the shared strips included:
/// so neighbours in two bands face each other wherever the outline crosses from one into the other. What a band holds more
/// than it needs goes to both its ends.
/// </para>
/// <para>
/// To cover a figure with the fewest rectangles is hard in general; this is a good answer, not a proof. It is never worse
/// than the full rectangle about the same middle, whose rows are one of the stacks tried.
/// </para>
/// </remarks>
internal sealed class AdaptedSearch(
    SkyOutline outline,
    FieldShape field,
    PanelOverlap overlap,
    double margin
)
{
    /// <summary>Heights at which the stack of bands is tried, an odd number: the middle, and as many to either side.</summary>
    private const int Heights = 11;

    /// <summary>Bands beyond which an adapted grid is not sought.</summary>
    private const int MostBands = 400;

    /// <summary>The best layout about a middle at an angle; null when the outline is too large for one.</summary>
    public BandLayout? At(CameraPose pose) =>
        BandLayout.Better(Bands(pose, rows: true), Bands(pose, rows: false));

    private BandLayout? Bands(CameraPose pose, bool rows)
    {
        var stack = new BandStack(
            new OutlineBands(outline, pose, rows),
            field,
            overlap,
            margin,
            rows
        );
        if (stack.Count > MostBands)
        {
            return null;
        }

        BandLayout? best = null;
        for (var i = 0; i < Heights; i++)
        {
            // The middle first, as of a full rectangle, then outwards by turns.
            var shift = ((i + 1) / 2) * (i % 2 == 0 ? 1.0 : -1.0) / (Heights - 1);
            best = BandLayout.Better(best, stack.At(0.5 + shift, broken: false));
            best = BandLayout.Better(best, stack.At(0.5 + shift, broken: true));
        }

        return best;
    }
}
