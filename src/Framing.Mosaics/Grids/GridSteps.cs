using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>The arithmetic of panels in a row: all in tangents of one plane.</summary>
public static class GridSteps
{
    /// <summary>
    /// The part of a step by which an outline may stand out before it costs another panel: rounding must not add one to
    /// an exact fit.
    /// </summary>
    internal const double Grace = 1e-9;

    /// <summary>Panels needed along one axis.</summary>
    /// <param name="extent">What the outline takes up along the axis, a tangent, 0 or more.</param>
    /// <param name="panel">The panel's side along the axis, a tangent, more than 0.</param>
    /// <param name="overlap">What neighbours share, a tangent, at least 0 and less than the panel.</param>
    /// <param name="margin">What to leave on either side, a tangent.</param>
    /// <returns>1 or more; at most 1,000,000.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is out of its range.</exception>
    public static int PanelsNeeded(double extent, double panel, double overlap, double margin)
    {
        CheckOverlap(panel, overlap, nameof(overlap));
        var missing = extent + (2.0 * margin) - panel;
        var steps = Math.Ceiling((missing / (panel - overlap)) - Grace);
        return (int)Math.Clamp(steps + 1.0, 1.0, 1_000_000.0);
    }

    /// <summary>The whole mosaic as one large frame.</summary>
    /// <param name="field">One panel.</param>
    /// <param name="overlap">What neighbours share.</param>
    /// <param name="columns">Panels along the width, 1 or more.</param>
    /// <param name="rows">Panels along the height, 1 or more.</param>
    /// <returns>The outer sides: w + (columns - 1)(w - overlap), and the like for the height.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An overlap is negative or not less than the panel, or a number is less than 1.</exception>
    public static FieldShape WholeFrame(
        FieldShape field,
        PanelOverlap overlap,
        int columns,
        int rows
    )
    {
        Check(field, overlap);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        return new(
            field.TangentWidth + ((columns - 1) * (field.TangentWidth - overlap.AlongWidth)),
            field.TangentHeight + ((rows - 1) * (field.TangentHeight - overlap.AlongHeight))
        );
    }

    internal static void Check(FieldShape field, PanelOverlap overlap)
    {
        CheckOverlap(field.TangentWidth, overlap.AlongWidth, nameof(overlap));
        CheckOverlap(field.TangentHeight, overlap.AlongHeight, nameof(overlap));
    }

    private static void CheckOverlap(double panel, double overlap, string name)
    {
        if (!(overlap >= 0.0 && overlap < panel))
        {
            throw new ArgumentOutOfRangeException(
                name,
                overlap,
                FormattableString.Invariant(
                    $"An overlap is at least 0 and less than the panel, here {panel} as a tangent."
                )
            );
        }
    }
}
