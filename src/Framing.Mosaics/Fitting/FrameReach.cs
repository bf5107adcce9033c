using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How far the corners of a hull reach in a frame's plane, and which they are.</summary>
/// <remarks>Not <see cref="InFront"/>: a corner lies 90° or more from where the frame looks, and nothing else is said.</remarks>
internal readonly record struct FrameReach(
    bool InFront,
    PlanePoint Right,
    PlanePoint Top,
    PlanePoint Left,
    PlanePoint Bottom
)
{
    /// <summary>The width of the smallest frame about the present middle that holds all corners.</summary>
    public double NeededWidth => 2.0 * Math.Max(Right.Xi, -Left.Xi);

    /// <summary>The height of the smallest frame about the present middle that holds all corners.</summary>
    public double NeededHeight => 2.0 * Math.Max(Top.Eta, -Bottom.Eta);

    public static FrameReach Of(Vector3D[] hull, FrameAxes axes)
    {
        var first = Project(hull[0], axes);
        PlanePoint right = first,
            top = first,
            left = first,
            bottom = first;
        foreach (var corner in hull)
        {
            if (corner.Dot(axes.Z) <= 0.0)
            {
                return default;
            }

            var point = Project(corner, axes);
            right = point.Xi > right.Xi ? point : right;
            left = point.Xi < left.Xi ? point : left;
            top = point.Eta > top.Eta ? point : top;
            bottom = point.Eta < bottom.Eta ? point : bottom;
        }

        return new(true, right, top, left, bottom);
    }

    public static PlanePoint Project(Vector3D direction, FrameAxes axes)
    {
        var depth = direction.Dot(axes.Z);
        return new(direction.Dot(axes.X) / depth, direction.Dot(axes.Y) / depth);
    }
}
