using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>The sinc function within a window three samples wide on either side, over 6 by 6 samples.</summary>
/// <remarks>
/// Source: Duchon 1979, J. Appl. Meteorol. 18, 1016. The weights are brought to a sum of 1, so that a flat sky stays flat.
/// They are kept for places a thousandth of a pixel apart, two numbers beyond the six being 0.
/// </remarks>
internal sealed class LanczosSampler : PlaneSampler
{
    private const int Taps = 6;
    private const int Lanes = 8;
    private const int Phases = 1024;

    private static readonly float[] Weights = Table();

    public override int Margin => Lanes;

    /// <inheritdoc/>
    /// <remarks>Beyond the middles of the outermost pixels theirs is kept.</remarks>
    public override float At(ReadOnlySpan<float> plane, int width, int height, PixelPosition pixel)
    {
        var x = Math.Clamp(pixel.X - 1.0, 0.0, width - 1.0);
        var y = Math.Clamp(pixel.Y - 1.0, 0.0, height - 1.0);
        var (left, low) = ((int)x, (int)y);
        Span<double> across = stackalloc double[Taps];
        Span<double> along = stackalloc double[Taps];
        Fill(along, x - left);
        Fill(across, y - low);
        var (sum, weight) = (0.0, 0.0);
        for (var j = 0; j < Taps; j++)
        {
            var row = low - 2 + j;
            for (var i = 0; i < Taps && row >= 0 && row < height; i++)
            {
                var column = left - 2 + i;
                if (
                    column >= 0
                    && column < width
                    && plane[(row * width) + column] is var sample
                    && float.IsFinite(sample)
                )
                {
                    sum += sample * along[i] * across[j];
                    weight += along[i] * across[j];
                }
            }
        }

        return weight > 0.5 ? (float)(sum / weight) : float.NaN;
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
        ref var weights = ref MemoryMarshal.GetArrayDataReference(Weights);
        ref var origin = ref Unsafe.AsRef(in first);
        for (var i = 0; i < result.Length; i++)
        {
            ref var corner = ref Unsafe.Add(ref origin, index[i] - 2 - (2 * width));
            ref var up = ref Unsafe.Add(ref weights, Phase(alongY[i]));
            var sum = Vector256.LoadUnsafe(ref corner) * up;
            for (var row = 1; row < Taps; row++)
            {
                corner = ref Unsafe.Add(ref corner, width);
                sum = Vector256.MultiplyAddEstimate(
                    Vector256.LoadUnsafe(ref corner),
                    Vector256.Create(Unsafe.Add(ref up, row)),
                    sum
                );
            }

            var along = Vector256.LoadUnsafe(ref weights, (nuint)Phase(alongX[i]));
            result[i] = Vector256.Sum(sum * along);
        }
    }

    private static int Phase(float along) => Lanes * (int)((along * Phases) + 0.5f);

    private static float[] Table()
    {
        var table = new float[(Phases + 1) * Lanes];
        Span<double> row = stackalloc double[Taps];
        for (var phase = 0; phase <= Phases; phase++)
        {
            Fill(row, phase / (double)Phases);
            for (var i = 0; i < Taps; i++)
            {
                table[(phase * Lanes) + i] = (float)row[i];
            }
        }

        return table;
    }

    /// <summary>The weights of samples -2 to 3 at a place from 0 to 1.</summary>
    private static void Fill(Span<double> row, double at)
    {
        var sum = 0.0;
        for (var i = 0; i < Taps; i++)
        {
            var t = Math.PI * (at + 2.0 - i);
            row[i] =
                Math.Abs(t) < 1e-9 ? 1.0
                : Math.Abs(t) >= 3.0 * Math.PI ? 0.0
                : 3.0 * Math.Sin(t) * Math.Sin(t / 3.0) / (t * t);
            sum += row[i];
        }

        for (var i = 0; i < Taps; i++)
        {
            row[i] /= sum;
        }
    }
}
