namespace Framing.Sky;

/// <summary>The bending of starlight by the Sun: 1.75″ at its edge, 0.04″ at 10°, away from the Sun.</summary>
/// <param name="SunToEarth">Unit vector from the Sun to the Earth.</param>
/// <param name="Distance">Distance of the Sun, au.</param>
/// <remarks>
/// Source: Explanatory Supplement to the Astronomical Almanac (3rd ed., 2013), section 7.2.4; constants and the softening
/// within about 5′ of the Sun's centre as in ERFA 2.0.0, ld and ldsun.
/// </remarks>
internal readonly record struct LightDeflection(Vector3D SunToEarth, double Distance)
{
    private const double SchwarzschildRadiusAu = 1.97412574336e-8;
    private const int MostRounds = 20;

    /// <summary>The bent direction of a star.</summary>
    /// <param name="unit">The straight direction, a unit vector.</param>
    /// <returns>The bent direction, a unit vector.</returns>
    public Vector3D Bend(Vector3D unit) => (unit + Change(unit)).Unit();

    /// <summary>The straight direction of a star that is seen bent.</summary>
    /// <param name="bent">The bent direction, a unit vector.</param>
    /// <returns>The straight direction, a unit vector.</returns>
    public Vector3D Straighten(Vector3D bent)
    {
        // Each round makes the error at least 40 times smaller, even behind the Sun; the error left is 1/40 of the last step.
        var straight = bent;
        for (var round = 0; round < MostRounds; round++)
        {
            // The change is at right angles to the straight direction, so this is the length that bending took away.
            var change = Change(straight);
            var length = Math.Sqrt(1.0 + change.Dot(change));
            var next = ((bent * length) - change).Unit();
            var step = (next - straight).Length;
            straight = next;
            if (step < 1e-15)
            {
                break;
            }
        }

        return straight;
    }

    private Vector3D Change(Vector3D unit)
    {
        // 1 + cos by half the squared length of the sum: 5′ from the Sun the plain sum has lost six digits.
        var sum = unit + SunToEarth;
        var onePlusCosine = 0.5 * sum.Dot(sum);
        var least = 1e-6 / Math.Max(Distance * Distance, 1.0);
        var weight = SchwarzschildRadiusAu / Distance / Math.Max(onePlusCosine, least);
        return (SunToEarth - (unit * (onePlusCosine - 1.0))) * weight;
    }
}
