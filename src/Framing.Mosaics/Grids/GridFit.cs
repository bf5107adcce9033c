namespace Framing.Mosaics;

/// <summary>A grid of panels laid over an outline.</summary>
/// <param name="Columns">Panels along the width of the picture.</param>
/// <param name="Rows">Panels along the height of the picture.</param>
/// <param name="Frame">
/// The whole mosaic as one large frame: its centre and angle, and the margin it leaves. What the panels hold more than the
/// outline needs has gone into the margin.
/// </param>
/// <param name="WantedMargin">The margin that was asked for, a tangent.</param>
/// <param name="MostPanels">The most panels allowed.</param>
public readonly record struct GridFit(
    int Columns,
    int Rows,
    FittedFrame Frame,
    double WantedMargin,
    int MostPanels
)
{
    /// <summary>The number of panels; beyond <see cref="MostPanels"/> it is what would be needed.</summary>
    public long Panels => (long)Columns * Rows;

    /// <summary>False when the outline needs (or the plan asks for) more panels than are allowed.</summary>
    public bool WithinMostPanels => Panels <= MostPanels;

    /// <summary>True when the wanted margin is left on all sides; a fixed grid can be too small for it.</summary>
    /// <remarks>Up to a billionth of the whole frame may be missing: that is rounding.</remarks>
    public bool HoldsMargin =>
        Frame.TangentMargin
        >= WantedMargin
            - (GridSteps.Grace * Math.Max(Frame.Field.TangentWidth, Frame.Field.TangentHeight));
}
