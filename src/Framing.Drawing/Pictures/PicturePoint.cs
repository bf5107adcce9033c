namespace Framing.Drawing;

/// <summary>A place in a picture: from its outer top left corner to the right and down, in pixels.</summary>
/// <param name="X">To the right; the first column of pixels spans 0 to 1.</param>
/// <param name="Y">Down; the top row of pixels spans 0 to 1.</param>
public readonly record struct PicturePoint(double X, double Y)
{
    /// <summary>The sum of two steps.</summary>
    public static PicturePoint operator +(PicturePoint left, PicturePoint right) =>
        new(left.X + right.X, left.Y + right.Y);

    /// <summary>The step from one place to another.</summary>
    public static PicturePoint operator -(PicturePoint left, PicturePoint right) =>
        new(left.X - right.X, left.Y - right.Y);

    /// <summary>A multiple of a step.</summary>
    public static PicturePoint operator *(PicturePoint step, double factor) =>
        new(step.X * factor, step.Y * factor);

    /// <summary>The length of the step in pixels.</summary>
    public double Length => double.Hypot(X, Y);
}
