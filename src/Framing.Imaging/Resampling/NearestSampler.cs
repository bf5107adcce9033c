using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>The nearest sample.</summary>
internal sealed class NearestSampler : PlaneSampler
{
    public override int Margin => 1;

    public override double Shift => 0.5;

    public override float At(ReadOnlySpan<float> plane, int width, int height, PixelPosition pixel)
    {
        var column = Math.Clamp((int)Math.Floor(pixel.X - 0.5), 0, width - 1);
        var row = Math.Clamp((int)Math.Floor(pixel.Y - 0.5), 0, height - 1);
        var sample = plane[(row * width) + column];
        return float.IsFinite(sample) ? sample : float.NaN;
    }

    public override void Row(
        ref readonly float first,
        int width,
        PlacesInPlane places,
        Span<float> result
    )
    {
        var index = places.Index[..result.Length];
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = Unsafe.Add(ref Unsafe.AsRef(in first), index[i]);
        }
    }
}
