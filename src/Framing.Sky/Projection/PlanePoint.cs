namespace Framing.Sky;

/// <summary>
/// A point in a tangent plane, in standard coordinates: pure tangents, so that 1 is 45° from the centre.
/// </summary>
/// <param name="Xi">Towards east (growing right ascension) at the centre of the plane.</param>
/// <param name="Eta">Towards north at the centre of the plane.</param>
/// <remarks>FITS writes the same point in "degrees", which are these tangents times 180/π.</remarks>
public readonly record struct PlanePoint(double Xi, double Eta)
{
    /// <summary>The sum of two points taken as steps.</summary>
    public static PlanePoint operator +(PlanePoint left, PlanePoint right) =>
        new(left.Xi + right.Xi, left.Eta + right.Eta);

    /// <summary>The step from the right point to the left one.</summary>
    public static PlanePoint operator -(PlanePoint left, PlanePoint right) =>
        new(left.Xi - right.Xi, left.Eta - right.Eta);

    /// <summary>A multiple of a step.</summary>
    public static PlanePoint operator *(PlanePoint point, double factor) =>
        new(point.Xi * factor, point.Eta * factor);
}
