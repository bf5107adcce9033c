using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Convex figures of great-circle arcs from which convex panels are taken off, piece by piece.</summary>
/// <remarks>Corners run so that the inside is to the left seen from outside the sphere; their vectors need not be of unit length.</remarks>
internal sealed class ConvexPieces
{
    /// <summary>Corners no farther inside than this count as on the border: rounding, 2e-8 seconds of arc.</summary>
    private const double Border = 1e-13;

    private readonly Vector3D[] scratch = new Vector3D[2 * MostCorners];
    private RingList pieces = new();
    private RingList next = new();

    /// <summary>More corners than a piece gets: each cut adds one, and no place has so many panels.</summary>
    private const int MostCorners = 256;

    public RingList Pieces => pieces;

    /// <summary>Starts again from one figure, whichever way its corners run.</summary>
    public void Start(params ReadOnlySpan<Vector3D> corners)
    {
        pieces.Clear();
        Span<Vector3D> ring = stackalloc Vector3D[corners.Length];
        corners.CopyTo(ring);
        if (ring[0].Dot(ring[1].Cross(ring[2])) < 0.0)
        {
            ring.Reverse();
        }

        pieces.Add(ring);
    }

    /// <summary>Takes off what lies inside all of some great circles, given by the vectors that point inwards.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void TakeOff(ReadOnlySpan<Vector3D> inwards)
    {
        next.Clear();
        for (var i = 0; i < pieces.Count; i++)
        {
            TakeOff(pieces[i], inwards);
        }

        (pieces, next) = (next, pieces);
    }

    /// <summary>Leaves away pieces below an area, which are rounding, and gives the area of the rest in steradians.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Weigh(double least)
    {
        var sum = 0.0;
        next.Clear();
        for (var i = 0; i < pieces.Count; i++)
        {
            var area = Area(pieces[i]);
            if (area > least)
            {
                sum += area;
                next.Add(pieces[i]);
            }
        }

        (pieces, next) = (next, pieces);
        return sum;
    }

    /// <summary>The area of a convex figure on the sphere, in steradians.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Area(ReadOnlySpan<Vector3D> ring)
    {
        var sum = 0.0;
        var a = ring[0].Unit();
        for (var i = 2; i < ring.Length; i++)
        {
            var b = ring[i - 1].Unit();
            var c = ring[i].Unit();
            sum += ArcArea.Triangle(a, b, c);
        }

        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void TakeOff(ReadOnlySpan<Vector3D> piece, ReadOnlySpan<Vector3D> inwards)
    {
        // What lies beyond one of the circles keeps clear of the figure, and must not be cut by the other ones.
        foreach (var normal in inwards)
        {
            if (!AnyInside(piece, normal))
            {
                next.Add(piece);
                return;
            }
        }

        var rest = scratch.AsSpan(0, MostCorners);
        var other = scratch.AsSpan(MostCorners);
        piece.CopyTo(rest);
        var count = piece.Length;
        foreach (var normal in inwards)
        {
            var outside = Part(rest[..count], -normal, other);
            if (outside >= 3)
            {
                next.Add(other[..outside]);
            }

            count = Part(rest[..count], normal, other);
            if (count < 3)
            {
                return;
            }

            var spare = rest;
            rest = other;
            other = spare;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool AnyInside(ReadOnlySpan<Vector3D> ring, Vector3D inwards)
    {
        foreach (var corner in ring)
        {
            if (corner.Dot(inwards) > Border)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Writes the part of a convex figure on the inner side of a great circle; the number of its corners, 0 when nothing is left.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int Part(ReadOnlySpan<Vector3D> ring, Vector3D inwards, Span<Vector3D> part)
    {
        if (!AnyInside(ring, inwards))
        {
            return 0;
        }

        var count = 0;
        var last = ring[^1];
        var lastSide = last.Dot(inwards);
        foreach (var corner in ring)
        {
            var side = corner.Dot(inwards);
            if (side > 0.0 != lastSide > 0.0)
            {
                part[count++] = ((corner * lastSide) - (last * side)) * (1.0 / (lastSide - side));
            }

            if (side > 0.0)
            {
                part[count++] = corner;
            }

            (last, lastSide) = (corner, side);
        }

        return count;
    }
}
