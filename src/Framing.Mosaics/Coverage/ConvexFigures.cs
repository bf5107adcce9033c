using System.Runtime.InteropServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Convex figures of great-circle arcs, anywhere on the sphere; each smaller than a hemisphere.</summary>
/// <remarks>
/// A figure is what lies on the inner side of all its sides, and its corners run counter-clockwise as seen from outside the
/// sphere. The side that starts at a corner bears the corner's number.
/// </remarks>
internal sealed class ConvexFigures
{
    private readonly List<int> starts = [0];
    private readonly List<Vector3D> corners = [];
    private readonly List<Vector3D> normals = [];
    private readonly List<int> next = [];
    private readonly List<Vector3D> middles = [];
    private readonly List<double> reaches = [];

    /// <summary>How many figures there are.</summary>
    public int Count => middles.Count;

    /// <summary>How many sides all figures have.</summary>
    public int Sides => corners.Count;

    /// <summary>All corners, unit vectors, figure by figure.</summary>
    public ReadOnlySpan<Vector3D> Corners => CollectionsMarshal.AsSpan(corners);

    /// <summary>The unit vector square to each side, on the side's inner side.</summary>
    public ReadOnlySpan<Vector3D> Normals => CollectionsMarshal.AsSpan(normals);

    /// <summary>The corner that ends each side.</summary>
    public ReadOnlySpan<int> Next => CollectionsMarshal.AsSpan(next);

    /// <summary>A direction inside each figure.</summary>
    public ReadOnlySpan<Vector3D> Middles => CollectionsMarshal.AsSpan(middles);

    /// <summary>The chord from each figure's middle to its farthest corner.</summary>
    public ReadOnlySpan<double> Reaches => CollectionsMarshal.AsSpan(reaches);

    /// <summary>The number of a figure's first corner.</summary>
    public int First(int figure) => starts[figure];

    /// <summary>How many corners a figure has.</summary>
    public int Size(int figure) => starts[figure + 1] - starts[figure];

    /// <summary>The shortest side of a figure.</summary>
    public double ShortestSide(int figure)
    {
        var shortest = double.MaxValue;
        for (var k = starts[figure]; k < starts[figure + 1]; k++)
        {
            shortest = Math.Min(shortest, (corners[next[k]] - corners[k]).Length);
        }

        return shortest;
    }

    /// <summary>The same figures, to add others to.</summary>
    public ConvexFigures Copy()
    {
        var copy = new ConvexFigures();
        copy.starts.Clear();
        copy.starts.AddRange(starts);
        copy.corners.AddRange(corners);
        copy.normals.AddRange(normals);
        copy.next.AddRange(next);
        copy.middles.AddRange(middles);
        copy.reaches.AddRange(reaches);
        return copy;
    }

    /// <summary>Adds a figure.</summary>
    /// <param name="ring">Its corners, either way round.</param>
    /// <param name="shortest">Corners nearer to each other than this count as one.</param>
    /// <returns>False when no figure is left: less than three corners apart.</returns>
    public bool Add(ReadOnlySpan<Vector3D> ring, double shortest)
    {
        var first = corners.Count;
        foreach (var corner in ring)
        {
            if (corners.Count == first || (corner - corners[^1]).Length > shortest)
            {
                corners.Add(corner);
            }
        }

        while (corners.Count > first && (corners[^1] - corners[first]).Length <= shortest)
        {
            corners.RemoveAt(corners.Count - 1);
        }

        var size = corners.Count - first;
        if (size < 3)
        {
            corners.RemoveRange(first, size);
            return false;
        }

        var middle = default(Vector3D);
        for (var k = first; k < corners.Count; k++)
        {
            middle += corners[k];
        }

        middle = middle.Unit();
        if (Turn(corners[first], corners[first + 1], corners[first + 2]) < 0.0)
        {
            corners.Reverse(first, size);
        }

        var reach = 0.0;
        for (var k = 0; k < size; k++)
        {
            var (from, to) = (corners[first + k], corners[first + ((k + 1) % size)]);
            var normal = from.Cross(to - from);
            normals.Add(normal.Unit());
            next.Add(first + ((k + 1) % size));
            reach = Math.Max(reach, (from - middle).Length);
        }

        middles.Add(middle);
        reaches.Add(reach);
        starts.Add(corners.Count);
        return true;
    }

    /// <summary>True when a direction lies inside a figure or on its border.</summary>
    public bool Holds(int figure, Vector3D direction, double tolerance = 0.0)
    {
        for (var k = starts[figure]; k < starts[figure + 1]; k++)
        {
            if (normals[k].Dot(direction) < -tolerance)
            {
                return false;
            }
        }

        return true;
    }

    private static double Turn(Vector3D a, Vector3D b, Vector3D c) => a.Cross(b - a).Dot(c - a);
}
