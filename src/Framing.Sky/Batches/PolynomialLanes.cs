using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Framing.Sky;

/// <summary>Two polynomials of the same two variables, for many places at a time.</summary>
internal sealed class PolynomialLanes
{
    // From the highest power of u down, within it from the highest of v: the term of the first, then of the second.
    private readonly double[] terms;
    private readonly int order;

    /// <summary>Joins two polynomials.</summary>
    public PolynomialLanes(PixelPolynomial first, PixelPolynomial second)
    {
        order = Math.Max(first.Order, second.Order);
        terms = new double[(order + 1) * (order + 2)];
        var at = 0;
        for (var p = order; p >= 0; p--)
        {
            for (var q = order - p; q >= 0; q--)
            {
                terms[at++] = first[p, q];
                terms[at++] = second[p, q];
            }
        }
    }

    /// <summary>Both values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void At(
        Vector<double> u,
        Vector<double> v,
        out Vector<double> first,
        out Vector<double> second
    )
    {
        ref var term = ref MemoryMarshal.GetArrayDataReference(terms);
        first = Vector.Create(term);
        second = Vector.Create(Unsafe.Add(ref term, 1));
        term = ref Unsafe.Add(ref term, 2);
        for (var length = 2; length <= order + 1; length++)
        {
            var a = Vector.Create(term);
            var b = Vector.Create(Unsafe.Add(ref term, 1));
            term = ref Unsafe.Add(ref term, 2);
            for (var q = 1; q < length; q++)
            {
                a = Vector.MultiplyAddEstimate(a, v, Vector.Create(term));
                b = Vector.MultiplyAddEstimate(b, v, Vector.Create(Unsafe.Add(ref term, 1)));
                term = ref Unsafe.Add(ref term, 2);
            }

            first = Vector.MultiplyAddEstimate(first, u, a);
            second = Vector.MultiplyAddEstimate(second, u, b);
        }
    }

    /// <summary>Both values and their derivatives.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void At(
        Vector<double> u,
        Vector<double> v,
        out Vector<double> first,
        out Vector<double> second,
        out SlopeLanes slopes
    )
    {
        ref var term = ref MemoryMarshal.GetArrayDataReference(terms);
        first = Vector.Create(term);
        second = Vector.Create(Unsafe.Add(ref term, 1));
        term = ref Unsafe.Add(ref term, 2);
        Vector<double> firstU = default,
            firstV = default,
            secondU = default,
            secondV = default;
        for (var length = 2; length <= order + 1; length++)
        {
            Vector<double> slopeA = default,
                slopeB = default;
            var a = Vector.Create(term);
            var b = Vector.Create(Unsafe.Add(ref term, 1));
            term = ref Unsafe.Add(ref term, 2);
            for (var q = 1; q < length; q++)
            {
                slopeA = Vector.MultiplyAddEstimate(slopeA, v, a);
                slopeB = Vector.MultiplyAddEstimate(slopeB, v, b);
                a = Vector.MultiplyAddEstimate(a, v, Vector.Create(term));
                b = Vector.MultiplyAddEstimate(b, v, Vector.Create(Unsafe.Add(ref term, 1)));
                term = ref Unsafe.Add(ref term, 2);
            }

            firstU = Vector.MultiplyAddEstimate(firstU, u, first);
            secondU = Vector.MultiplyAddEstimate(secondU, u, second);
            first = Vector.MultiplyAddEstimate(first, u, a);
            second = Vector.MultiplyAddEstimate(second, u, b);
            firstV = Vector.MultiplyAddEstimate(firstV, u, slopeA);
            secondV = Vector.MultiplyAddEstimate(secondV, u, slopeB);
        }

        slopes = new(firstU, firstV, secondU, secondV);
    }
}
