using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A grid of panels laid over an outline.</summary>
/// <param name="Columns">Panels along the width of the picture; where they fill no rectangle the most of a row, or all columns.</param>
/// <param name="Rows">Panels along the height of the picture; where they fill no rectangle all rows, or the most of a column.</param>
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
    /// <summary>Where the panels stand when they fill no rectangle; null when they do.</summary>
    public PanelPlaces? Places { get; init; }

    /// <summary>The margin that panels in bands of their own leave on the tightest side; of no meaning for a rectangle.</summary>
    internal double PlacedMargin { get; init; }

    /// <summary>The margin left on the tightest side, a tangent; negative where the outline does not fit.</summary>
    public double TangentMargin => Places is null ? Frame.TangentMargin : PlacedMargin;

    /// <summary>The number of panels; beyond <see cref="MostPanels"/> it is what would be needed.</summary>
    public long Panels => Places?.Places.Count ?? (long)Columns * Rows;

    /// <summary>False when the outline needs (or the plan asks for) more panels than are allowed.</summary>
    public bool WithinMostPanels => Panels <= MostPanels;

    /// <summary>True when the wanted margin is left on all sides; a fixed grid can be too small for it.</summary>
    /// <remarks>Up to a billionth of the whole frame may be missing: that is rounding.</remarks>
    public bool HoldsMargin =>
        TangentMargin
        >= WantedMargin
            - (GridSteps.Grace * Math.Max(Frame.Field.TangentWidth, Frame.Field.TangentHeight));
}
