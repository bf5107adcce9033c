namespace Framing.Imaging;

/// <summary>How a picture's stored rows and columns are shown: the eight ways of TIFF's tag 274, which Exif shares.</summary>
/// <param name="Code">1 as stored, 2 mirrored, 3 turned by 180 degrees, … 8; each other number is taken as 1.</param>
/// <param name="StoredWidth">Columns as stored.</param>
/// <param name="StoredHeight">Rows as stored.</param>
/// <remarks>Source: TIFF 6.0, section 8, Orientation: which shown edges the stored row 0 and column 0 are.</remarks>
internal readonly record struct Orientation(int Code, int StoredWidth, int StoredHeight)
{
    /// <summary>True when stored rows are shown as columns.</summary>
    public bool Swaps => Code is >= 5 and <= 8;

    public int Width => Swaps ? StoredHeight : StoredWidth;

    public int Height => Swaps ? StoredWidth : StoredHeight;

    /// <summary>True when the stored columns run leftwards or upwards as shown.</summary>
    private bool TurnsColumns => Code is 2 or 3 or 7 or 8;

    /// <summary>True when the stored rows run leftwards or upwards as shown.</summary>
    private bool TurnsRows => Code is 3 or 4 or 6 or 7;

    /// <summary>Where a stored pixel is shown, both counted from 0 at the top left.</summary>
    public (int Column, int Row) Shown(int column, int row)
    {
        var across = TurnsColumns ? StoredWidth - 1 - column : column;
        var down = TurnsRows ? StoredHeight - 1 - row : row;
        return Swaps ? (down, across) : (across, down);
    }

    /// <summary>Where a shown pixel is stored, both counted from 0 at the top left.</summary>
    public (int Column, int Row) Stored(int column, int row)
    {
        var (across, down) = Swaps ? (row, column) : (column, row);
        return (
            TurnsColumns ? StoredWidth - 1 - across : across,
            TurnsRows ? StoredHeight - 1 - down : down
        );
    }
}
