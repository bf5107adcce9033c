namespace Framing.Sky;

/// <summary>
/// The linear part of world coordinates: from pixels to the tangent plane. The FITS CD matrix, in FITS "degrees" a pixel.
/// </summary>
/// <param name="Cd11">Degrees east per pixel along the first axis.</param>
/// <param name="Cd12">Degrees east per pixel along the second axis.</param>
/// <param name="Cd21">Degrees north per pixel along the first axis.</param>
/// <param name="Cd22">Degrees north per pixel along the second axis.</param>
/// <remarks>
/// <para>The first row is right ascension and the second declination, also where a file stores them the other way.</para>
/// <para>
/// Source: Greisen and Calabretta 2002, A&amp;A 395, 1061; FITS Standard 4.0 section 8.2. With CDELT2 &gt; 0 the position
/// angle of the second axis is -CROTA2, for both parities.
/// </para>
/// </remarks>
public readonly record struct PixelMatrix(double Cd11, double Cd12, double Cd21, double Cd22)
{
    /// <summary>The determinant: negative when the picture, with its second axis up, shows the sky as the eye sees it.</summary>
    public double Determinant => (Cd11 * Cd22) - (Cd12 * Cd21);

    /// <summary>True when the picture, with its second axis up, is mirrored against the sky as the eye sees it.</summary>
    public bool IsMirrored => Determinant > 0.0;

    /// <summary>False when the matrix maps the picture onto a line or a point, or holds a number that is not finite.</summary>
    /// <remarks>Singular is meant relative to its own size: parallel to within 1e-12.</remarks>
    public bool IsUsable
    {
        get
        {
            var size = (Cd11 * Cd11) + (Cd12 * Cd12) + (Cd21 * Cd21) + (Cd22 * Cd22);
            return double.IsFinite(size) && size > 0.0 && Math.Abs(Determinant) > 1e-12 * size;
        }
    }

    /// <summary>Sky per pixel at the tangent point, the geometric mean of both axes.</summary>
    public Angle Scale => Angle.FromDegrees(Math.Sqrt(Math.Abs(Determinant)));

    /// <summary>Sky per pixel along the first axis at the tangent point.</summary>
    public Angle ScaleX => Angle.FromDegrees(double.Hypot(Cd11, Cd21));

    /// <summary>Sky per pixel along the second axis at the tangent point.</summary>
    public Angle ScaleY => Angle.FromDegrees(double.Hypot(Cd12, Cd22));

    /// <summary>Position angle of the second axis (+y) at the tangent point.</summary>
    public PositionAngle PositionAngleOfY =>
        PositionAngle.FromAngle(Angle.FromRadians(Math.Atan2(Cd12, Cd22)));

    /// <summary>Position angle of the first axis (+x) at the tangent point.</summary>
    public PositionAngle PositionAngleOfX =>
        PositionAngle.FromAngle(Angle.FromRadians(Math.Atan2(Cd11, Cd21)));

    /// <summary>
    /// Position angle of +y of the square-pixel matrix that lies closest: the mean over both axes where pixels are skewed
    /// or not square.
    /// </summary>
    /// <remarks>The nearest turn in the sense of least squares; for square pixels the same as <see cref="PositionAngleOfY"/>.</remarks>
    public PositionAngle MeanPositionAngle =>
        PositionAngle.FromAngle(
            Angle.FromRadians(
                IsMirrored
                    ? Math.Atan2(Cd12 - Cd21, Cd22 + Cd11)
                    : Math.Atan2(Cd12 + Cd21, Cd22 - Cd11)
            )
        );

    /// <summary>The matrix of square pixels.</summary>
    /// <param name="up">Position angle of the second axis (+y).</param>
    /// <param name="scale">Sky per pixel, more than 0.</param>
    /// <param name="mirrored">True for the mirrored parity (determinant positive).</param>
    /// <returns>The matrix.</returns>
    public static PixelMatrix FromPositionAngle(PositionAngle up, Angle scale, bool mirrored)
    {
        var (sin, cos) = Math.SinCos(up.Radians);
        var s = scale.Degrees;
        return mirrored
            ? new(s * cos, s * sin, -s * sin, s * cos)
            : new(-s * cos, s * sin, s * sin, s * cos);
    }

    /// <summary>The matrix of CDELT and CROTA2, the older form.</summary>
    /// <param name="delta1">CDELT1, degrees a pixel.</param>
    /// <param name="delta2">CDELT2, degrees a pixel.</param>
    /// <param name="rotation">CROTA2.</param>
    /// <returns>The matrix.</returns>
    public static PixelMatrix FromRotation(double delta1, double delta2, Angle rotation)
    {
        var (sin, cos) = Math.SinCos(rotation.Radians);
        return new(delta1 * cos, -delta2 * sin, delta1 * sin, delta2 * cos);
    }

    /// <summary>The matrix of CDELT and a PC matrix.</summary>
    /// <param name="delta1">CDELT1, degrees a pixel.</param>
    /// <param name="delta2">CDELT2, degrees a pixel.</param>
    /// <param name="pc">The PC matrix, without unit; missing elements are those of the unit matrix.</param>
    /// <returns>The matrix CDij = CDELTi · PCij.</returns>
    public static PixelMatrix FromPc(double delta1, double delta2, PixelMatrix pc) =>
        new(delta1 * pc.Cd11, delta1 * pc.Cd12, delta2 * pc.Cd21, delta2 * pc.Cd22);

    /// <summary>The matrix that gives with LONPOLE = 180° what this one gives with another LONPOLE.</summary>
    /// <param name="lonPole">
    /// LONPOLE of the header. Where the header has none it is 180°, except for a reference point at the north pole itself
    /// (CRVAL2 = 90): there the standard's default is 0, and the picture is turned by half a turn.
    /// </param>
    /// <returns>The matrix, turned about the reference point by LONPOLE - 180°.</returns>
    /// <remarks>Calabretta and Greisen 2002, sections 2.4 and 2.8, for projections whose pole is the reference point (TAN).</remarks>
    public PixelMatrix WithLonPole(Angle lonPole)
    {
        var (sin, cos) = Math.SinCos(lonPole.Radians - Math.PI);
        return new(
            (cos * Cd11) + (sin * Cd21),
            (cos * Cd12) + (sin * Cd22),
            (cos * Cd21) - (sin * Cd11),
            (cos * Cd22) - (sin * Cd12)
        );
    }

    /// <summary>The matrix of the same picture with its rows stored in the opposite order.</summary>
    /// <returns>CD · diag(1, -1).</returns>
    public PixelMatrix WithRowsReversed() => new(Cd11, -Cd12, Cd21, -Cd22);

    /// <summary>The matrix of the same picture with pixels joined.</summary>
    /// <param name="factor">How many old pixels make one new one along each axis; less than 1 splits pixels.</param>
    /// <returns>CD times the factor.</returns>
    public PixelMatrix Binned(double factor) =>
        new(Cd11 * factor, Cd12 * factor, Cd21 * factor, Cd22 * factor);

    /// <summary>The matrix that leads back: pixels a degree. For a matrix that is usable.</summary>
    internal PixelMatrix Inverse()
    {
        var det = Determinant;
        return new(Cd22 / det, -Cd12 / det, -Cd21 / det, Cd11 / det);
    }
}
