namespace Framing.Imaging;

/// <summary>Gathers stored rows into shown planes, y = 1 at the bottom, averaged in square blocks.</summary>
/// <remarks>Samples that are NaN are left out of their block's mean; a block of nothing else is NaN.</remarks>
internal sealed class PlaneBuilder
{
    private readonly Orientation orientation;
    private readonly int factor;
    private readonly float[][] sums;
    private readonly int[]?[] missing;

    public PlaneBuilder(Orientation orientation, int factor, int planes)
    {
        this.orientation = orientation;
        this.factor = factor;
        Size = new(orientation.Width, orientation.Height, factor);
        sums = new float[planes][];
        missing = new int[]?[planes];
        for (var plane = 0; plane < planes; plane++)
        {
            sums[plane] = new float[Size.Width * Size.Height];
        }
    }

    public BlockAverage Size { get; }

    /// <summary>Takes a stored row.</summary>
    /// <param name="plane">From 0.</param>
    /// <param name="row">From 0 at the stored top.</param>
    /// <param name="values">A sample a column.</param>
    public void Put(int plane, int row, ReadOnlySpan<float> values)
    {
        var target = sums[plane];
        var (column, fromTop) = orientation.Shown(0, row);
        var (nextColumn, nextFromTop) = orientation.Shown(1, row);
        var (right, down) = (nextColumn - column, nextFromTop - fromTop);
        var y = orientation.Height - 1 - fromTop;
        foreach (var value in values)
        {
            var (x, block) = (column / factor, y / factor);
            column += right;
            y -= down;
            if (x >= Size.Width || block >= Size.Height)
            {
                continue;
            }

            var at = (block * Size.Width) + x;
            if (float.IsNaN(value) && factor > 1)
            {
                (missing[plane] ??= new int[target.Length])[at]++;
            }
            else
            {
                target[at] += value;
            }
        }
    }

    /// <summary>The planes; to be asked for once.</summary>
    public float[][] Finish()
    {
        for (var plane = 0; factor > 1 && plane < sums.Length; plane++)
        {
            var values = sums[plane];
            for (var i = 0; i < values.Length; i++)
            {
                var count = (factor * factor) - (missing[plane]?[i] ?? 0);
                values[i] = count == 0 ? float.NaN : values[i] / count;
            }
        }

        return sums;
    }
}
