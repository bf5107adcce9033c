using System.Globalization;

namespace Framing.Sky;

/// <summary>An area on the sky.</summary>
/// <remarks><c>default(SolidAngle)</c> is no area. A whole sphere is 4π sr, 41252.96 square degrees.</remarks>
public readonly record struct SolidAngle
{
    private const double SquareDegreesPerSteradian = 180.0 / Math.PI * (180.0 / Math.PI);

    private SolidAngle(double steradians) => Steradians = steradians;

    /// <summary>The area in steradians.</summary>
    public double Steradians { get; }

    /// <summary>The area in square degrees.</summary>
    public double SquareDegrees => Steradians * SquareDegreesPerSteradian;

    /// <summary>The area in square minutes of arc.</summary>
    public double SquareArcminutes => SquareDegrees * 3600.0;

    /// <summary>The sum of two areas.</summary>
    public static SolidAngle operator +(SolidAngle left, SolidAngle right) =>
        new(left.Steradians + right.Steradians);

    /// <summary>The difference of two areas.</summary>
    public static SolidAngle operator -(SolidAngle left, SolidAngle right) =>
        new(left.Steradians - right.Steradians);

    /// <summary>Makes an area from steradians.</summary>
    /// <param name="steradians">Steradians, finite; negative only as a difference.</param>
    /// <returns>The area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static SolidAngle FromSteradians(double steradians) =>
        double.IsFinite(steradians)
            ? new(steradians)
            : throw new ArgumentOutOfRangeException(
                nameof(steradians),
                steradians,
                "An area must be a finite number."
            );

    /// <summary>Makes an area from square degrees.</summary>
    /// <param name="squareDegrees">Square degrees, finite.</param>
    /// <returns>The area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static SolidAngle FromSquareDegrees(double squareDegrees) =>
        FromSteradians(squareDegrees / SquareDegreesPerSteradian);

    /// <summary>Square degrees with six decimals, in the invariant culture.</summary>
    public override string ToString() =>
        SquareDegrees.ToString("0.######", CultureInfo.InvariantCulture) + " sq deg";
}
