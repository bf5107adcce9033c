namespace Framing.Mosaics;

/// <summary>How many panels a plan asks for: a fixed grid, or as few as hold the outline.</summary>
/// <remarks><c>default(GridWish)</c> is <see cref="Fewest"/>.</remarks>
public readonly record struct GridWish
{
    private GridWish(int columns, int rows)
    {
        Columns = columns;
        Rows = rows;
    }

    /// <summary>As few panels as hold the outline with its margin, in a full rectangle.</summary>
    public static GridWish Fewest => default;

    /// <summary>
    /// As few panels as hold the outline with its margin, in bands that follow it: never more than in a full rectangle.
    /// </summary>
    public static GridWish Adapted => new() { IsAdapted = true };

    /// <summary>True when the number of panels is free.</summary>
    public bool IsFewest => Columns == 0;

    /// <summary>True when the panels need not fill a rectangle; their number is free then.</summary>
    public bool IsAdapted { get; private init; }

    /// <summary>Panels along the width of the picture; 0 when free.</summary>
    public int Columns { get; }

    /// <summary>Panels along the height of the picture; 0 when free.</summary>
    public int Rows { get; }

    /// <summary>A fixed grid.</summary>
    /// <param name="columns">Panels along the width of the picture, 1 or more.</param>
    /// <param name="rows">Panels along the height of the picture, 1 or more.</param>
    /// <returns>The wish.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is less than 1.</exception>
    public static GridWish Fixed(int columns, int rows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        return new(columns, rows);
    }
}
