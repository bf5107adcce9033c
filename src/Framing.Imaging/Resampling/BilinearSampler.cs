using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Linear between the four samples around a place.</summary>
internal sealed class BilinearSampler : PlaneSampler
{
    public override int Margin => 1;

    /// <inheritdoc/>
    /// <remarks>Beyond the middles of the outermost pixels theirs is kept.</remarks>
    public override float At(ReadOnlySpan<float> plane, int width, int height, PixelPosition pixel)
    {
        var x = Math.Clamp(pixel.X - 1.0, 0.0, width - 1.0);
        var y = Math.Clamp(pixel.Y - 1.0, 0.0, height - 1.0);
        var left = Math.Min((int)x, Math.Max(0, width - 2));
        var low = Math.Min((int)y, Math.Max(0, height - 2));
        var toRight = (float)(x - left);
        var toHigh = (float)(y - low);
        var here = (low * width) + left;
        var right = width > 1 ? 1 : 0;
        var up = height > 1 ? width : 0;
        var a = plane[here];
        var b = plane[here + right];
        var c = plane[here + up];
        var d = plane[here + up + right];
        var bottom = a + ((b - a) * toRight);
        var top = c + ((d - c) * toRight);
        var value = bottom + ((top - bottom) * toHigh);
        return float.IsFinite(value)
            ? value
            : Defined(
                [a, b, c, d],
                [
                    (1f - toRight) * (1f - toHigh),
                    toRight * (1f - toHigh),
                    (1f - toRight) * toHigh,
                    toRight * toHigh,
                ]
            );
    }

    public override void Row(
        ref readonly float first,
        int width,
        PlacesInPlane places,
        Span<float> result
    )
    {
        var index = places.Index[..result.Length];
        var alongX = places.AlongX[..result.Length];
        var alongY = places.AlongY[..result.Length];
        ref var origin = ref Unsafe.AsRef(in first);
        for (var i = 0; i < result.Length; i++)
        {
            ref var low = ref Unsafe.Add(ref origin, index[i]);
            ref var high = ref Unsafe.Add(ref low, width);
            var bottom = low + ((Unsafe.Add(ref low, 1) - low) * alongX[i]);
            var top = high + ((Unsafe.Add(ref high, 1) - high) * alongX[i]);
            result[i] = bottom + ((top - bottom) * alongY[i]);
        }
    }

    private static float Defined(ReadOnlySpan<float> samples, ReadOnlySpan<float> weights)
    {
        var sum = 0f;
        var weight = 0f;
        for (var i = 0; i < samples.Length; i++)
        {
            if (float.IsFinite(samples[i]))
            {
                sum += samples[i] * weights[i];
                weight += weights[i];
            }
        }

        return weight > 0.5f ? sum / weight : float.NaN;
    }
}
