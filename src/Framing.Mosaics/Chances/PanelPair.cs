namespace Framing.Mosaics;

/// <summary>Two neighbours by their places in the list of panels.</summary>
/// <param name="First">The one to the left or above.</param>
/// <param name="Second">The one to the right or below.</param>
/// <param name="AlongWidth">True for neighbours in a row.</param>
internal readonly record struct PanelPair(int First, int Second, bool AlongWidth)
{
    /// <summary>All pairs of a grid: those of the rows first, in reading order.</summary>
    public static PanelPair[] OfGrid(int columns, int rows)
    {
        List<PanelPair> pairs = [];
        for (var i = 0; i < columns * rows; i++)
        {
            if ((i + 1) % columns != 0)
            {
                pairs.Add(new(i, i + 1, true));
            }
        }

        for (var i = 0; i < columns * (rows - 1); i++)
        {
            pairs.Add(new(i, i + columns, false));
        }

        return [.. pairs];
    }
}
