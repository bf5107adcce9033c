namespace Framing.Strategies;

/// <summary>How many panels an angle needs.</summary>
/// <param name="Columns">Panels along the width of the picture; where they fill no rectangle the most of a row, or all columns.</param>
/// <param name="Rows">Panels along the height of the picture; where they fill no rectangle all rows, or the most of a column.</param>
/// <param name="TangentMargin">
/// The margin left on the tighter pair of sides, as a tangent; negative when the outline does not fit.
/// </param>
public readonly record struct PanelCount(int Columns, int Rows, double TangentMargin)
{
    /// <summary>The number of panels where they fill no rectangle; null where they do.</summary>
    public int? Placed { get; init; }

    /// <summary>The number of panels.</summary>
    public long Panels => Placed ?? (long)Columns * Rows;
}
