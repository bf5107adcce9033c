using Framing.Sky;

namespace Framing.Solving;

/// <summary>Places a frame by two stars that somebody marked in it.</summary>
public static class MarkedStars
{
    private const int Rounds = 12;

    /// <summary>World coordinates from two marked stars.</summary>
    /// <param name="first">One star.</param>
    /// <param name="second">Another star, at another place of the frame and of the sky.</param>
    /// <param name="width">Columns of the frame.</param>
    /// <param name="height">Rows of the frame.</param>
    /// <param name="mirrored">True where the frame, with its second axis up, is mirrored against the sky.</param>
    /// <returns>
    /// World coordinates with square pixels, the reference pixel in the middle of the frame; null when the stars are one
    /// place, or so far apart that no tangent plane holds both.
    /// </returns>
    /// <remarks>
    /// Two stars cannot tell the parity: both fit exactly, and only a third star off their line shows which is right.
    /// A complex similarity ζ = ζ0 + m z; the tangent point moves to the fitted middle and the step is repeated.
    /// </remarks>
    public static TanWorldCoordinates? Place(
        StarMatch first,
        StarMatch second,
        int width,
        int height,
        bool mirrored
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        var sum = first.Direction.Vector + second.Direction.Vector;
        if (sum.Length < 1e-6)
        {
            return null;
        }

        PixelPosition middle = new(0.5 * (width + 1), 0.5 * (height + 1));
        var sign = mirrored ? 1.0 : -1.0;
        double x1 = sign * (first.Position.X - middle.X),
            y1 = first.Position.Y - middle.Y,
            x2 = sign * (second.Position.X - middle.X),
            y2 = second.Position.Y - middle.Y;
        double dx = x2 - x1,
            dy = y2 - y1;
        var square = (dx * dx) + (dy * dy);
        var plane = new TangentPlane(SkyDirection.FromVector(sum));
        double re = 0.0,
            im = 0.0;
        for (var round = 0; round < Rounds; round++)
        {
            if (
                !plane.TryProject(first.Direction, out var p1)
                || !plane.TryProject(second.Direction, out var p2)
            )
            {
                return null;
            }

            double dXi = p2.Xi - p1.Xi,
                dEta = p2.Eta - p1.Eta;
            re = ((dXi * dx) + (dEta * dy)) / square;
            im = ((dEta * dx) - (dXi * dy)) / square;
            plane = new TangentPlane(
                plane.Unproject(
                    new(p1.Xi - ((re * x1) - (im * y1)), p1.Eta - ((re * y1) + (im * x1)))
                )
            );
        }

        const double degrees = 180.0 / Math.PI;
        var matrix = new PixelMatrix(
            sign * re * degrees,
            -im * degrees,
            sign * im * degrees,
            re * degrees
        );
        return matrix.IsUsable ? new(middle, plane.Centre, matrix) : null;
    }
}
