using Framing.Sky;

namespace Framing.Fits;

/// <summary>The CD matrix of a tangent plane with its y axis to the north, LONPOLE folded in: a turn of the plane.</summary>
internal static class TangentMatrix
{
    /// <summary>Turns a matrix.</summary>
    /// <param name="reference">CRVAL.</param>
    /// <param name="sphere">How the native sphere lies on the sky.</param>
    /// <param name="matrix">The matrix for that sphere.</param>
    /// <returns>The matrix for LONPOLE = 180; null where the native pole is not the reference point.</returns>
    public static PixelMatrix? Of(SkyDirection reference, NativeSphere sphere, PixelMatrix matrix)
    {
        var plain = NativeSphere.About(reference);
        if ((plain.Z - sphere.Z).Length > 1e-12)
        {
            return null;
        }

        // The plane's x is the native y axis and its y the opposite of the native x axis.
        var (cos, sin) = (plain.Y.Dot(sphere.Y), plain.Y.Dot(sphere.X));
        if (cos > 0.0 && Math.Abs(sin) <= 1e-15)
        {
            return matrix;
        }

        return new(
            (cos * matrix.Cd11) - (sin * matrix.Cd21),
            (cos * matrix.Cd12) - (sin * matrix.Cd22),
            (sin * matrix.Cd11) + (cos * matrix.Cd21),
            (sin * matrix.Cd12) + (cos * matrix.Cd22)
        );
    }
}
