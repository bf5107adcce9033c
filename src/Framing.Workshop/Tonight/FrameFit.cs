using Framing.Sky;

namespace Framing.Workshop;

/// <summary>How an extent fits a frame whose long side lies along the extent's.</summary>
/// <param name="Columns">Frames along its length.</param>
/// <param name="Rows">Frames along its width.</param>
/// <param name="Fills">What part of the mosaic's tighter side it fills, 0 to 1.</param>
public readonly record struct FrameFit(int Columns, int Rows, double Fills)
{
    /// <summary>Neighbours share this part of a frame: common practice.</summary>
    private const double Shared = 0.15;

    /// <summary>All frames.</summary>
    public int Frames => Columns * Rows;

    /// <summary>Fits an extent.</summary>
    /// <param name="major">Its length, with the margin wanted around it.</param>
    /// <param name="minor">Its width, with the margin wanted around it.</param>
    /// <param name="field">What the camera sees.</param>
    /// <returns>The fewest frames, the camera turned one way or the other.</returns>
    public static FrameFit Of(Angle major, Angle minor, FieldShape field)
    {
        var (along, across) = (Tangent(major), Tangent(minor));
        var one = Lying(along, across, field.TangentWidth, field.TangentHeight);
        var other = Lying(along, across, field.TangentHeight, field.TangentWidth);
        return (other.Frames, -other.Fills).CompareTo((one.Frames, -one.Fills)) < 0 ? other : one;
    }

    private static FrameFit Lying(double along, double across, double width, double height)
    {
        var (columns, rows) = (Count(along, width), Count(across, height));
        return new(
            columns,
            rows,
            Math.Max(along / Side(columns, width), across / Side(rows, height))
        );
    }

    private static int Count(double length, double side) =>
        length <= side
            ? 1
            : (int)
                Math.Min(1e4, Math.Ceiling((length - (Shared * side)) / ((1.0 - Shared) * side)));

    private static double Side(int count, double side) =>
        side * (1.0 + ((count - 1) * (1.0 - Shared)));

    // Twice the tangent of the half, as frames are measured; what spans more than 150° is as good as endless.
    private static double Tangent(Angle extent) =>
        2.0 * Math.Tan(Math.Min(extent.Radians, 2.6) / 2.0);
}
