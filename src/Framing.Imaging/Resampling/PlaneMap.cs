using Framing.Sky;

namespace Framing.Imaging;

/// <summary>
/// From the pixels of one tangent picture to those of another. Great circles are straight lines in both, so the whole way
/// (pixel, plane, sky, plane, pixel) is one 3 by 3 matrix and a division: exact everywhere, with nothing to interpolate.
/// </summary>
internal sealed class PlaneMap : PixelMap
{
    private const double RadiansPerDegree = Math.PI / 180.0;

    // Rows: x · w, y · w and w of the picture; columns: x, y, 1 of the target. w > 0 in front of the picture's plane.
    private readonly double[] m = new double[9];

    public PlaneMap(TanWorldCoordinates target, TanWorldCoordinates picture)
    {
        var matrix = picture.Matrix;
        var det = matrix.Determinant;
        Span<Vector3D> target3 = stackalloc Vector3D[3];
        Columns(target, target3);
        for (var column = 0; column < 3; column++)
        {
            var v = target3[column];
            var xi = v.Dot(picture.ReferenceDirection.East) / RadiansPerDegree;
            var eta = v.Dot(picture.ReferenceDirection.North) / RadiansPerDegree;
            var w = v.Dot(picture.ReferenceDirection.Vector);
            m[column] =
                (((matrix.Cd22 * xi) - (matrix.Cd12 * eta)) / det) + (picture.ReferencePixel.X * w);
            m[3 + column] =
                (((matrix.Cd11 * eta) - (matrix.Cd21 * xi)) / det) + (picture.ReferencePixel.Y * w);
            m[6 + column] = w;
        }
    }

    /// <summary>Where a target pixel lies in the picture.</summary>
    /// <param name="x">Target x, as FITS counts.</param>
    /// <param name="y">Target y.</param>
    /// <param name="pixel">The picture's pixel; meaningless when the answer is false.</param>
    /// <returns>False when it lies behind the picture's tangent plane.</returns>
    public bool TryMap(double x, double y, out PixelPosition pixel)
    {
        var w = (m[6] * x) + (m[7] * y) + m[8];
        if (!(w > 0.0))
        {
            pixel = default;
            return false;
        }

        pixel = new(((m[0] * x) + (m[1] * y) + m[2]) / w, ((m[3] * x) + (m[4] * y) + m[5]) / w);
        return true;
    }

    /// <inheritdoc/>
    public override void MapRow(int row, Span<double> x, Span<double> y)
    {
        for (var column = 0; column < x.Length; column++)
        {
            (x[column], y[column]) = TryMap(column + 1.0, row + 1.0, out var pixel)
                ? (pixel.X, pixel.Y)
                : (double.NaN, double.NaN);
        }
    }

    /// <summary>The target's directions (not of unit length) as a matrix over (x, y, 1).</summary>
    private static void Columns(TanWorldCoordinates target, Span<Vector3D> columns)
    {
        var reference = target.ReferenceDirection;
        var matrix = target.Matrix;
        columns[0] =
            ((reference.East * matrix.Cd11) + (reference.North * matrix.Cd21)) * RadiansPerDegree;
        columns[1] =
            ((reference.East * matrix.Cd12) + (reference.North * matrix.Cd22)) * RadiansPerDegree;
        columns[2] =
            reference.Vector
            - (columns[0] * target.ReferencePixel.X)
            - (columns[1] * target.ReferencePixel.Y);
    }
}
