using System.Numerics;

namespace Framing.Sky;

/// <summary>Distortions of many places at a time, there and back.</summary>
/// <remarks>
/// The way back takes plain steps of Newton's iteration where each brings a place ten times nearer, which <see cref="Distortion"/>
/// would do just so. Everything else becomes NaN and is left to it.
/// </remarks>
internal static class DistortionLanes
{
    private const int MostSteps = 6;

    /// <summary>A move of this part of a place's size leaves an error of its square.</summary>
    private const double Small = 3e-9;

    /// <summary>Places become their images.</summary>
    public static void Apply<TLanes>(TLanes lanes, Span<Vector<double>> u, Span<Vector<double>> v)
        where TLanes : struct, IDistortionLanes
    {
        v = v[..u.Length];
        for (var i = 0; i < u.Length; i++)
        {
            lanes.Map(u[i], v[i], out u[i], out v[i]);
        }
    }

    /// <summary>Images become the places that have them; NaN where that takes more than plain steps.</summary>
    public static void Undo<TLanes>(TLanes lanes, Span<Vector<double>> u, Span<Vector<double>> v)
        where TLanes : struct, IDistortionLanes
    {
        v = v[..u.Length];
        for (var i = 0; i < u.Length; i++)
        {
            var (wantedU, wantedV) = (u[i], v[i]);
            var (atU, atV) = (wantedU, wantedV);
            lanes.Start(ref atU, ref atV);
            var good = Vector<long>.AllBitsSet;
            var (left, far) = (Vector.Create(double.PositiveInfinity), good);
            for (var step = 0; step < MostSteps; step++)
            {
                lanes.Map(atU, atV, out var imageU, out var imageV, out var s);
                var (missU, missV) = (wantedU - imageU, wantedV - imageV);
                var now = Vector.MultiplyAddEstimate(missU, missU, missV * missV);
                good &= Vector.LessThan(now, left * Vector.Create(0.01)) | ~far;
                left = now;
                var det = (s.Uu * s.Vv) - (s.Uv * s.Vu);
                var size = (s.Uu * s.Uu) + (s.Uv * s.Uv) + (s.Vu * s.Vu) + (s.Vv * s.Vv);
                good &= Vector.GreaterThan(det, size * Vector.Create(0.05));
                var perDet = Vector<double>.One / det;
                var moveU = ((s.Vv * missU) - (s.Uv * missV)) * perDet;
                var moveV = ((s.Uu * missV) - (s.Vu * missU)) * perDet;
                (atU, atV) = (atU + moveU, atV + moveV);
                far = Vector.GreaterThan(
                    Vector.Abs(moveU) + Vector.Abs(moveV),
                    (Vector.Abs(atU) + Vector.Abs(atV) + Vector.Create(lanes.Least))
                        * Vector.Create(Small)
                );
                if ((far & good) == Vector<long>.Zero)
                {
                    break;
                }
            }

            good &= ~far;
            u[i] = Vector.ConditionalSelect(good, atU, Vector.Create(double.NaN));
            v[i] = atV;
        }
    }
}
