namespace Framing.Imaging;

/// <summary>A picture drawn onto another grid of pixels.</summary>
public sealed class ResampledPicture
{
    private readonly float[][] planes;
    private readonly Lazy<bool[]> covered;

    internal ResampledPicture(int width, int height, float[][] planes)
    {
        Width = width;
        Height = height;
        this.planes = planes;
        covered = new(Cover);
    }

    /// <summary>Columns of the target.</summary>
    public int Width { get; }

    /// <summary>Rows of the target.</summary>
    public int Height { get; }

    /// <summary>1 for grey, 3 for colours.</summary>
    public int Planes => planes.Length;

    /// <summary>Row after row: true where the picture covers the target pixel's middle and holds a sample there.</summary>
    public ReadOnlySpan<bool> Covered => covered.Value;

    /// <summary>Samples of a plane in the picture's own numbers, row after row; NaN where nothing covers.</summary>
    /// <param name="plane">From 0.</param>
    /// <returns>Width · height samples.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such plane.</exception>
    public ReadOnlySpan<float> Plane(int plane)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(plane);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(plane, planes.Length);
        return planes[plane];
    }

    private bool[] Cover()
    {
        var all = new bool[Width * Height];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = !float.IsNaN(planes[0][i]);
        }

        foreach (var plane in planes[1..])
        {
            for (var i = 0; i < all.Length; i++)
            {
                all[i] &= !float.IsNaN(plane[i]);
            }
        }

        return all;
    }
}
