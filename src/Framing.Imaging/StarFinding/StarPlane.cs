using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>The one plane in which stars are looked for, and what a measurement must know of its samples.</summary>
/// <remarks>
/// Under a colour filter every pixel is joined with its eight neighbours by the weights 1 2 1, 2 4 2, 1 2 1. At every pixel these
/// see each of the four colours of a 2 x 2 pattern with the same weight, so that the pattern vanishes and a red star
/// stays where it is.
/// </remarks>
internal sealed class StarPlane
{
    private StarPlane(int width, int height, float[] samples, float[] raw)
    {
        Width = width;
        Height = height;
        Samples = samples;
        Raw = raw;
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>The samples in which stars are looked for.</summary>
    public float[] Samples { get; }

    /// <summary>The samples as read: the same, but under a colour filter.</summary>
    public float[] Raw { get; }

    public bool HasColourFilter => !ReferenceEquals(Samples, Raw);

    /// <summary>Of each pixel of the 2 x 2 pattern, its background over the mean background.</summary>
    public float[] PatternRatio { get; private init; } = [1f, 1f, 1f, 1f];

    /// <summary>The noise of a sum over many pixels is larger by this than that of single ones tells, for neighbours were joined.</summary>
    public double JoinedNoise => HasColourFilter ? 16.0 / 6.0 : 1.0;

    /// <summary>The step of whole numbers; 0 for numbers with fractions.</summary>
    public float Step { get; private init; }

    /// <summary>The number that stands for "nothing here" (black borders), or null.</summary>
    public float? Dead { get; private init; }

    /// <summary>The greatest finite sample.</summary>
    public float Greatest { get; private init; }

    /// <summary>The greatest number of the format; infinite where it has none.</summary>
    public float Most { get; private init; }

    public static StarPlane Of(Picture picture, bool? colourFilter)
    {
        var raw = picture.Planes == 1 ? picture.Samples(0) : Mean(picture);
        var most = picture.SampleFormat switch
        {
            SampleFormat.UInt8 => 255f,
            SampleFormat.UInt16 => 65535f,
            SampleFormat.Int16 => 32767f,
            _ => float.PositiveInfinity,
        };
        var whole = picture.SampleFormat is not (SampleFormat.Float32 or SampleFormat.Float64);
        var pattern = ColourPattern.Of(picture.Width, picture.Height, raw);
        var mosaic =
            picture is { Planes: 1, Reduction: 1, Width: > 4, Height: > 4 }
            && (colourFilter ?? pattern.IsVisible);
        return new(
            picture.Width,
            picture.Height,
            mosaic ? Joined(raw, picture.Width, picture.Height) : raw,
            raw
        )
        {
            PatternRatio = mosaic ? pattern.Ratio : [1f, 1f, 1f, 1f],
            Step =
                whole && !mosaic
                    ? 1f / (picture.Reduction * picture.Reduction * picture.Planes)
                    : 0f,
            Dead = pattern.HasBorder ? 0f : null,
            Greatest = GreatestOf(raw),
            Most = most,
        };
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static float GreatestOf(ReadOnlySpan<float> samples)
    {
        var vectors = MemoryMarshal.Cast<float, Vector<float>>(samples);
        var infinite = new Vector<float>(float.PositiveInfinity);
        var best = new Vector<float>(float.NegativeInfinity);
        foreach (var v in vectors)
        {
            // NaN compares false and is left out, and so is an infinite sample.
            var better = Vector.GreaterThan(v, best) & Vector.LessThan(v, infinite);
            best = Vector.ConditionalSelect(better, v, best);
        }

        var greatest = float.NegativeInfinity;
        for (var i = 0; i < Vector<float>.Count; i++)
        {
            greatest = Math.Max(greatest, best[i]);
        }

        foreach (var sample in samples[(vectors.Length * Vector<float>.Count)..])
        {
            greatest = float.IsFinite(sample) ? Math.Max(greatest, sample) : greatest;
        }

        return greatest;
    }

    private static float[] Mean(Picture picture)
    {
        var (red, green, blue) = (picture.Samples(0), picture.Samples(1), picture.Samples(2));
        var mean = GC.AllocateUninitializedArray<float>(red.Length);
        Parallel.For(
            0,
            picture.Height,
            row =>
            {
                for (var i = row * picture.Width; i < (row + 1) * picture.Width; i++)
                {
                    mean[i] = (red[i] + green[i] + blue[i]) / 3f;
                }
            }
        );
        return mean;
    }

    private static float[] Joined(float[] raw, int width, int height)
    {
        var joined = GC.AllocateUninitializedArray<float>(raw.Length);
        Parallel.For(
            0,
            height,
            y =>
            {
                // At the border the row before is that of the same colours on the other side.
                var above = raw.AsSpan((y == 0 ? 1 : y - 1) * width, width);
                var here = raw.AsSpan(y * width, width);
                var below = raw.AsSpan((y == height - 1 ? y - 1 : y + 1) * width, width);
                JoinRow(above, here, below, joined.AsSpan(y * width, width));
            }
        );
        return joined;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void JoinRow(
        ReadOnlySpan<float> above,
        ReadOnlySpan<float> here,
        ReadOnlySpan<float> below,
        Span<float> result
    )
    {
        var width = result.Length;
        var column = new float[width + 2];
        var inner = column.AsSpan(1, width);
        var count = Vector<float>.Count;
        var x = 0;
        for (; x <= width - count; x += count)
        {
            (
                new Vector<float>(above[x..])
                + new Vector<float>(below[x..])
                + (2f * new Vector<float>(here[x..]))
            ).CopyTo(inner[x..]);
        }

        for (; x < width; x++)
        {
            inner[x] = above[x] + below[x] + (2f * here[x]);
        }

        column[0] = inner[1];
        column[^1] = inner[^2];
        for (x = 0; x <= width - count; x += count)
        {
            (
                (
                    new Vector<float>(column, x)
                    + new Vector<float>(column, x + 2)
                    + (2f * new Vector<float>(column, x + 1))
                ) * (1f / 16f)
            ).CopyTo(result[x..]);
        }

        for (; x < width; x++)
        {
            result[x] = (column[x] + column[x + 2] + (2f * column[x + 1])) / 16f;
        }
    }
}
