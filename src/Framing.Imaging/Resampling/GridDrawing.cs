using System.Numerics;
using System.Runtime.InteropServices;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Draws a picture onto a chart tile by tile, the map being worked out exactly at few places and between them by polynomials.</summary>
/// <remarks>
/// A tile whose polynomials may be off by more than <see cref="MostError"/> is quartered until they are not; below eight
/// pixels each place is worked out by itself. So it is wherever some of a tile has no place in the picture.
/// </remarks>
internal sealed class GridDrawing(
    Picture picture,
    ChartMap map,
    PlaneSampler sampler,
    float[][] planes,
    int width,
    int height
)
{
    /// <summary>Pixels along a side of a tile.</summary>
    public const int Tile = PlacesInPlane.Most;

    /// <summary>Pixels of the picture by which a place may be off; single precision adds a tenth of it.</summary>
    public const double MostError = 0.002;

    private const int Smallest = 8;

    /// <summary>Draws one tile.</summary>
    /// <param name="column">Its first column.</param>
    /// <param name="row">Its first row.</param>
    public void Draw(int column, int row) => Draw(column, row, Tile);

    private void Draw(int column, int row, int size)
    {
        if (column >= width || row >= height)
        {
            return;
        }

        Span<double> chartX = stackalloc double[MapPatch.Nodes];
        Span<double> chartY = stackalloc double[MapPatch.Nodes];
        var step = size / (MapPatch.Side - 1.0);
        for (var i = 0; i < MapPatch.Nodes; i++)
        {
            chartX[i] = column + 1.0 + (step * (i % MapPatch.Side));
            chartY[i] = row + 1.0 + (step * (i / MapPatch.Side));
        }

        if (
            map.Misses(
                [chartX[12], chartX[0], chartX[4], chartX[20], chartX[24]],
                [chartY[12], chartY[0], chartY[4], chartY[20], chartY[24]]
            )
        )
        {
            Clear(column, row, size);
            return;
        }

        Span<double> x = stackalloc double[MapPatch.Nodes];
        Span<double> y = stackalloc double[MapPatch.Nodes];
        map.Map(chartX, chartY, x, y);
        for (var i = 0; i < MapPatch.Nodes; i++)
        {
            (x[i], y[i]) = (x[i] - 1.0, y[i] - 1.0);
        }

        var patch = new MapPatch(x, y, size);
        if (patch.Bound <= MostError)
        {
            Draw(patch, column, row, size);
        }
        else if (size <= Smallest)
        {
            DrawExactly(column, row, size);
        }
        else
        {
            var half = size / 2;
            Draw(column, row, half);
            Draw(column + half, row, half);
            Draw(column, row + half, half);
            Draw(column + half, row + half, half);
        }
    }

    private void Draw(MapPatch patch, int column, int row, int size)
    {
        if (
            patch.Right < -0.5
            || patch.High < -0.5
            || patch.Left > picture.Width - 0.5
            || patch.Low > picture.Height - 0.5
        )
        {
            Clear(column, row, size);
            return;
        }

        var within =
            patch.Left >= sampler.Margin
            && patch.Low >= sampler.Margin
            && patch.Right < picture.Width - sampler.Margin
            && patch.High < picture.Height - sampler.Margin
            && (patch.High - patch.Low) * picture.Width < int.MaxValue / 2;
        if (within)
        {
            DrawWithin(patch, column, row, size);
            return;
        }

        for (var j = 0; j < Math.Min(size, height - row); j++)
        {
            var (x, y) = patch.Row(j);
            for (var i = 0; i < Math.Min(size, width - column); i++)
            {
                Careful((width * (row + j)) + column + i, x.At(i) + 1.0, y.At(i) + 1.0);
            }
        }
    }

    /// <summary>Draws a square that lies well within the picture.</summary>
    private void DrawWithin(MapPatch patch, int column, int row, int size)
    {
        var (left, low) = ((int)patch.Left, (int)patch.Low);
        var first = (low * picture.Width) + left;
        var count = Math.Min(size, width - column);
        Span<int> index = stackalloc int[PlacesInPlane.Most];
        Span<float> alongX = stackalloc float[PlacesInPlane.Most];
        Span<float> alongY = stackalloc float[PlacesInPlane.Most];
        var lanes = Math.Min(
            PlacesInPlane.Most,
            (count + Vector<float>.Count - 1) / Vector<float>.Count * Vector<float>.Count
        );
        var places = new PlacesInPlane(index[..lanes], alongX[..lanes], alongY[..lanes]);
        for (var j = 0; j < Math.Min(size, height - row); j++)
        {
            var (x, y) = patch.Row(j);
            places.Find(
                x with
                {
                    Start = x.Start - left + sampler.Shift,
                },
                y with
                {
                    Start = y.Start - low + sampler.Shift,
                },
                picture.Width
            );
            var start = (width * (row + j)) + column;
            for (var plane = 0; plane < planes.Length; plane++)
            {
                var samples = picture.Samples(plane);
                var result = planes[plane].AsSpan(start, count);
                sampler.Row(ref samples[first], picture.Width, places, result);
                if (AllFinite(result))
                {
                    continue;
                }

                for (var i = 0; i < count; i++)
                {
                    if (!float.IsFinite(result[i]))
                    {
                        result[i] = sampler.At(
                            samples,
                            picture.Width,
                            picture.Height,
                            new(x.At(i) + 1.0, y.At(i) + 1.0)
                        );
                    }
                }
            }
        }
    }

    private void DrawExactly(int column, int row, int size)
    {
        Span<double> chartX = stackalloc double[Smallest];
        Span<double> chartY = stackalloc double[Smallest];
        Span<double> x = stackalloc double[Smallest];
        Span<double> y = stackalloc double[Smallest];
        var count = Math.Min(size, width - column);
        for (var j = row; j < Math.Min(row + size, height); j++)
        {
            for (var i = 0; i < count; i++)
            {
                (chartX[i], chartY[i]) = (column + i + 1.0, j + 1.0);
            }

            map.Map(chartX[..count], chartY[..count], x[..count], y[..count]);
            for (var i = 0; i < count; i++)
            {
                Careful((width * j) + column + i, x[i], y[i]);
            }
        }
    }

    /// <summary>Draws one pixel at a place as FITS counts, which may be none.</summary>
    private void Careful(int at, double x, double y)
    {
        var inside = x >= 0.5 && x <= picture.Width + 0.5 && y >= 0.5 && y <= picture.Height + 0.5;
        for (var plane = 0; plane < planes.Length; plane++)
        {
            planes[plane][at] = inside
                ? sampler.At(picture.Samples(plane), picture.Width, picture.Height, new(x, y))
                : float.NaN;
        }
    }

    private void Clear(int column, int row, int size)
    {
        var count = Math.Min(size, width - column);
        foreach (var plane in planes)
        {
            for (var j = row; j < Math.Min(row + size, height); j++)
            {
                plane.AsSpan((width * j) + column, count).Fill(float.NaN);
            }
        }
    }

    private static bool AllFinite(Span<float> values)
    {
        var lanes = MemoryMarshal.Cast<float, Vector<float>>(values);
        var sum = Vector<float>.Zero;
        foreach (var lane in lanes)
        {
            sum += lane - lane;
        }

        var rest = 0f;
        foreach (var value in values[(lanes.Length * Vector<float>.Count)..])
        {
            rest += value - value;
        }

        return Vector.Sum(sum) + rest == 0f;
    }
}
