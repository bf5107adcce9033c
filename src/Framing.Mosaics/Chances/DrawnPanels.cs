using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>The panels of a mosaic as drawn in one trial, all of one size.</summary>
internal sealed class DrawnPanels(int count, double halfWidth, double halfHeight)
{
    private readonly CameraAxes[] axes = new CameraAxes[count];

    public double HalfWidth => halfWidth;

    public double HalfHeight => halfHeight;

    public Span<CameraAxes> Axes => axes;

    public CameraAxes this[int index] => axes[index];

    /// <summary>How deep a direction lies inside a panel: tangents to the nearest side, times its distance along the axis.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Depth(int index, Vector3D direction)
    {
        var p = axes[index].See(direction);
        return Math.Min((halfWidth * p.Z) - Math.Abs(p.X), (halfHeight * p.Z) - Math.Abs(p.Y));
    }

    /// <summary>Writes the vectors that point inwards from the four sides of a panel.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Inwards(int index, Span<Vector3D> normals)
    {
        ref readonly var a = ref axes[index];
        normals[0] = (a.Forward * halfWidth) - a.Right;
        normals[1] = (a.Forward * halfWidth) + a.Right;
        normals[2] = (a.Forward * halfHeight) - a.Up;
        normals[3] = (a.Forward * halfHeight) + a.Up;
    }

    /// <summary>The part of an arc, 0 to 1 along its chord, that lies in a panel; empty where the start is not below the end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Start, double End) Along(int index, Vector3D from, Vector3D to)
    {
        ref readonly var a = ref axes[index];
        var (p, q) = (a.See(from), a.See(to));
        var (start, end) = (0.0, 1.0);
        Cut((halfWidth * p.Z) - p.X, (halfWidth * q.Z) - q.X, ref start, ref end);
        Cut((halfWidth * p.Z) + p.X, (halfWidth * q.Z) + q.X, ref start, ref end);
        Cut((halfHeight * p.Z) - p.Y, (halfHeight * q.Z) - q.Y, ref start, ref end);
        Cut((halfHeight * p.Z) + p.Y, (halfHeight * q.Z) + q.Y, ref start, ref end);
        return (start, end);
    }

    /// <summary>True when some panels together cover an arc from end to end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool CoverArc(Vector3D from, Vector3D to, ReadOnlySpan<int> panels)
    {
        // From the start on, always the panel that reaches farthest.
        const double Rounding = 1e-12;
        for (var reached = 0.0; ; )
        {
            var farthest = reached;
            foreach (var index in panels)
            {
                var (start, end) = Along(index, from, to);
                if (start < end && start <= reached + Rounding && end > farthest)
                {
                    farthest = end;
                }
            }

            if (farthest >= 1.0 - Rounding)
            {
                return true;
            }

            if (farthest <= reached)
            {
                return false;
            }

            reached = farthest;
        }
    }

    private static void Cut(double atStart, double atEnd, ref double start, ref double end)
    {
        if (atStart >= 0.0 && atEnd >= 0.0)
        {
            return;
        }

        if (atStart < 0.0 && atEnd < 0.0)
        {
            (start, end) = (1.0, 0.0);
            return;
        }

        var crossing = atStart / (atStart - atEnd);
        if (atStart < 0.0)
        {
            start = Math.Max(start, crossing);
        }
        else
        {
            end = Math.Min(end, crossing);
        }
    }
}
