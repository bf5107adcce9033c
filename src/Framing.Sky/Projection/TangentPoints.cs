namespace Framing.Sky;

/// <summary>Finds where a tangent plane touches the sky, from one star and its place in the plane.</summary>
public static class TangentPoints
{
    /// <summary>All tangent points from which a star has given standard coordinates.</summary>
    /// <param name="star">The star.</param>
    /// <param name="point">Its standard coordinates in the plane sought, finite.</param>
    /// <returns>
    /// None, one or two directions. Away from the poles there is one; near a pole there can be two (the plane's north
    /// points to the pole from either side of it) or none. The one farther from the star's pole comes first.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    /// <remarks>
    /// <para>
    /// The third component of the star's vector gives sin δ0 + η cos δ0 = r sin δ, with r² = 1 + ξ² + η²; the two others
    /// then give α - α0 = atan2(ξ, cos δ0 - η sin δ0). Solutions beyond a pole are no declinations and are left out.
    /// </para>
    /// <para>A star at a pole with ξ = 0 fits every right ascension; the answer takes the star's own.</para>
    /// <para>Checked against SOFA's tpors.</para>
    /// </remarks>
    public static IReadOnlyList<SkyDirection> Find(SkyDirection star, PlanePoint point)
    {
        if (!double.IsFinite(point.Xi) || !double.IsFinite(point.Eta))
        {
            throw new ArgumentOutOfRangeException(
                nameof(point),
                FormattableString.Invariant($"{point.Xi}, {point.Eta}"),
                "Standard coordinates are finite numbers."
            );
        }

        var r = Math.Sqrt(1.0 + (point.Xi * point.Xi) + (point.Eta * point.Eta));
        var axial = r * star.Vector.Z;
        var across = r * double.Hypot(star.Vector.X, star.Vector.Y);

        // 1 + η² - (r sin δ)², written so that it does not cancel near the pole; the star's own rounding is forgiven.
        var square = (across - point.Xi) * (across + point.Xi);
        if (square < -1e-15 * r * across)
        {
            return [];
        }

        var root = Math.Sqrt(Math.Max(square, 0.0));

        // How far the star's rounding moves a solution: the more, the closer the two come to each other.
        var rounding = root > 0.0 ? 1e-15 * (2.0 + (r * across / root)) : 2e-15;
        var found = new List<SkyDirection>(2);
        foreach (var side in root > 0.0 ? [root, -root] : new[] { 0.0 })
        {
            // sin(δ0 + φ) = r sin δ / sqrt(1 + η²) with tan φ = η.
            var declination = Angle
                .FromRadians(Math.Atan2(axial, side) - Math.Atan(point.Eta))
                .WrappedSigned;
            if (declination.Magnitude.Radians > (Math.PI / 2.0) + rounding)
            {
                continue;
            }

            declination = Angle.FromRadians(
                Math.Clamp(declination.Radians, -Math.PI / 2.0, Math.PI / 2.0)
            );
            var (sin, cos) = Math.SinCos(declination.Radians);
            var difference = Math.Atan2(point.Xi, cos - (point.Eta * sin));
            found.Add(
                SkyDirection.FromRaDec(
                    star.RightAscension - Angle.FromRadians(difference),
                    declination
                )
            );
        }

        return found;
    }
}
