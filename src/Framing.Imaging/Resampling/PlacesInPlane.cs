using System.Numerics;
using System.Runtime.InteropServices;

namespace Framing.Imaging;

/// <summary>Where the pixels of a row lie in a plane of samples: which sample is next below, and how far beyond it.</summary>
/// <remarks>
/// Single precision is enough because places count from a sample nearby: a few hundred at most, so that rounding stays below
/// 0.0001 pixel.
/// </remarks>
internal readonly ref struct PlacesInPlane
{
    /// <summary>The longest row, a whole number of lanes.</summary>
    public const int Most = 64;

    private readonly Span<int> index;
    private readonly Span<float> alongX;
    private readonly Span<float> alongY;

    /// <summary>Takes memory for <see cref="Most"/> places.</summary>
    public PlacesInPlane(Span<int> index, Span<float> alongX, Span<float> alongY)
    {
        this.index = index;
        this.alongX = alongX;
        this.alongY = alongY;
    }

    /// <summary>Samples from the one that counts as first: of each place's lower left neighbour.</summary>
    public ReadOnlySpan<int> Index => index;

    /// <summary>How far beyond that neighbour along a row, 0 to 1.</summary>
    public ReadOnlySpan<float> AlongX => alongX;

    /// <summary>How far beyond it across rows.</summary>
    public ReadOnlySpan<float> AlongY => alongY;

    /// <summary>Works out the places of a row.</summary>
    /// <param name="x">Columns, from the first one that counts; not negative.</param>
    /// <param name="y">Rows, likewise.</param>
    /// <param name="width">Samples in a row of the plane.</param>
    public void Find(Parabola x, Parabola y, int width)
    {
        var indices = MemoryMarshal.Cast<int, Vector<int>>(index);
        var restsX = MemoryMarshal.Cast<float, Vector<float>>(alongX);
        var restsY = MemoryMarshal.Cast<float, Vector<float>>(alongY);
        var k = Vector.ConvertToSingle(Vector<int>.Indices);
        var (x0, x1, x2) = Lanes(x);
        var (y0, y1, y2) = Lanes(y);
        var stride = Vector.Create(width);
        for (var i = 0; i < indices.Length; i++)
        {
            var atX = x0 + (k * (x1 + (k * x2)));
            var atY = y0 + (k * (y1 + (k * y2)));
            var column = Vector.ConvertToInt32Native(atX);
            var row = Vector.ConvertToInt32Native(atY);
            indices[i] = (row * stride) + column;
            restsX[i] = atX - Vector.ConvertToSingle(column);
            restsY[i] = atY - Vector.ConvertToSingle(row);
            k += Vector.Create((float)Vector<float>.Count);
        }
    }

    private static (Vector<float> Start, Vector<float> Slope, Vector<float> Bend) Lanes(
        Parabola p
    ) =>
        (
            Vector.Create((float)p.Start),
            Vector.Create((float)p.Slope),
            Vector.Create((float)p.Bend)
        );
}
