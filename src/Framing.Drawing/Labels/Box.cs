namespace Framing.Drawing;

/// <summary>An upright rectangle in the picture, in pixels, y downwards.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public PicturePoint Middle => new((Left + Right) / 2.0, (Top + Bottom) / 2.0);

    public static Box Around(PicturePoint middle, double width, double height) =>
        new(
            middle.X - (width / 2.0),
            middle.Y - (height / 2.0),
            middle.X + (width / 2.0),
            middle.Y + (height / 2.0)
        );

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public bool Meets(Box other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Holds(Box other) =>
        other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    public bool Holds(PicturePoint point) =>
        point.X >= Left && point.X < Right && point.Y >= Top && point.Y < Bottom;

    public Box Within(Box other) =>
        new(
            Math.Max(Left, other.Left),
            Math.Max(Top, other.Top),
            Math.Min(Right, other.Right),
            Math.Min(Bottom, other.Bottom)
        );

    /// <summary>The distance of a place from the rectangle; 0 inside.</summary>
    public double DistanceTo(PicturePoint point) =>
        double.Hypot(
            Math.Max(0.0, Math.Max(Left - point.X, point.X - Right)),
            Math.Max(0.0, Math.Max(Top - point.Y, point.Y - Bottom))
        );

    /// <summary>True when a straight line between two places runs through the rectangle (slab test).</summary>
    public bool IsCrossedBy(PicturePoint from, PicturePoint to)
    {
        var (enter, leave) = (0.0, 1.0);
        return Slab(from.X, to.X - from.X, Left, Right, ref enter, ref leave)
            && Slab(from.Y, to.Y - from.Y, Top, Bottom, ref enter, ref leave);
    }

    private static bool Slab(
        double start,
        double step,
        double low,
        double high,
        ref double enter,
        ref double leave
    )
    {
        if (step == 0.0)
        {
            return start >= low && start <= high;
        }

        var (near, far) = ((low - start) / step, (high - start) / step);
        if (near > far)
        {
            (near, far) = (far, near);
        }

        enter = Math.Max(enter, near);
        leave = Math.Min(leave, far);
        return enter <= leave;
    }
}
