using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Convex figures of great-circle arcs from which convex panels are taken off, piece by piece.</summary>
/// <remarks>Corners run so that the inside is to the left seen from outside the sphere; their vectors need not be of unit length.</remarks>
internal sealed class ConvexPieces
{
    private List<Vector3D[]> pieces = [];
    private List<Vector3D[]> next = [];

    public IReadOnlyList<Vector3D[]> Pieces => pieces;

    /// <summary>Starts again from one figure, whichever way its corners run.</summary>
    public void Start(params ReadOnlySpan<Vector3D> corners)
    {
        pieces.Clear();
        var ring = corners.ToArray();
        if (ring[0].Dot(ring[1].Cross(ring[2])) < 0.0)
        {
            ring.AsSpan().Reverse();
        }

        pieces.Add(ring);
    }

    /// <summary>Takes off what lies inside all of some great circles, given by the vectors that point inwards.</summary>
    public void TakeOff(ReadOnlySpan<Vector3D> inwards)
    {
        next.Clear();
        foreach (var piece in pieces)
        {
            var rest = piece;
            foreach (var normal in inwards)
            {
                if (Part(rest, -normal) is { } outside)
                {
                    next.Add(outside);
                }

                if (Part(rest, normal) is not { } inside)
                {
                    break;
                }

                rest = inside;
            }
        }

        (pieces, next) = (next, pieces);
    }

    /// <summary>Leaves away pieces below an area, which are rounding, and gives the area of the rest in steradians.</summary>
    public double Weigh(double least)
    {
        var sum = 0.0;
        next.Clear();
        foreach (var piece in pieces)
        {
            var area = Area(piece);
            if (area > least)
            {
                sum += area;
                next.Add(piece);
            }
        }

        (pieces, next) = (next, pieces);
        return sum;
    }

    /// <summary>The area of a convex figure on the sphere, in steradians (Van Oosterom and Strackee 1983).</summary>
    public static double Area(ReadOnlySpan<Vector3D> ring)
    {
        var sum = 0.0;
        var a = ring[0] * (1.0 / ring[0].Length);
        for (var i = 2; i < ring.Length; i++)
        {
            var b = ring[i - 1] * (1.0 / ring[i - 1].Length);
            var c = ring[i] * (1.0 / ring[i].Length);
            sum +=
                2.0 * Math.Atan2(a.Dot((b - a).Cross(c - a)), 1.0 + a.Dot(b) + b.Dot(c) + c.Dot(a));
        }

        return sum;
    }

    /// <summary>The part of a convex figure on the inner side of a great circle; null when nothing is left.</summary>
    private static Vector3D[]? Part(Vector3D[] ring, Vector3D inwards)
    {
        var (some, all) = (false, true);
        foreach (var corner in ring)
        {
            var inside = corner.Dot(inwards) > 0.0;
            some |= inside;
            all &= inside;
        }

        if (all || !some)
        {
            return all ? ring : null;
        }

        List<Vector3D> part = new(ring.Length + 1);
        var last = ring[^1];
        var lastSide = last.Dot(inwards);
        foreach (var corner in ring)
        {
            var side = corner.Dot(inwards);
            if (side > 0.0 != lastSide > 0.0)
            {
                part.Add(((corner * lastSide) - (last * side)) * (1.0 / (lastSide - side)));
            }

            if (side > 0.0)
            {
                part.Add(corner);
            }

            (last, lastSide) = (corner, side);
        }

        return part.Count >= 3 ? [.. part] : null;
    }
}
