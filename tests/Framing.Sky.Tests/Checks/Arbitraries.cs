using FsCheck;
using FsCheck.Fluent;

namespace Framing.Sky.Tests;

/// <summary>What property tests draw from: the whole sky, with the places that trip people oftener than chance has them.</summary>
public static class Arbitraries
{
    private static readonly double[] AwkwardRa =
    [
        0.0,
        1e-9,
        90.0,
        180.0,
        270.0,
        359.9999999,
        359.0,
    ];
    private static readonly double[] AwkwardDec =
    [
        90.0,
        -90.0,
        89.9999999,
        -89.999,
        0.0,
        -1e-9,
        45.0,
    ];

    /// <summary>A number from 0 to 1, ends included.</summary>
    public static Gen<double> Unit { get; } =
        Gen.Choose(0, int.MaxValue).Select(number => number / (double)int.MaxValue);

    public static Gen<SkyDirection> Direction { get; } =
        Gen.Frequency(
            (4, from ra in Unit from z in Unit select Even(ra, z)),
            (
                1,
                from ra in Gen.Elements(AwkwardRa)
                from z in Unit
                select SkyDirection.FromDegrees(ra, (z * 180.0) - 90.0)
            ),
            (
                1,
                from ra in Unit
                from dec in Gen.Elements(AwkwardDec)
                select SkyDirection.FromDegrees(ra * 360.0, dec)
            ),
            (
                1,
                from ra in Gen.Elements(AwkwardRa)
                from dec in Gen.Elements(AwkwardDec)
                select SkyDirection.FromDegrees(ra, dec)
            )
        );

    public static Arbitrary<Angle> Angles() =>
        Gen.OneOf(
                from sign in Gen.Elements(-1.0, 1.0)
                from power in Unit
                select Angle.FromDegrees(sign * Math.Pow(10.0, (power * 22.0) - 18.0)),
                from quarter in Gen.Choose(-12, 12)
                from step in Gen.Elements(-1e-12, -1e-16, 0.0, 1e-16, 1e-12)
                select Angle.FromDegrees((quarter * 90.0) + step)
            )
            .ToArbitrary();

    /// <summary>Points of a tangent plane from a thousandth of an arcsecond to 80 degrees from its centre.</summary>
    public static Arbitrary<PlanePoint> PlanePoints() =>
        (
            from power in Unit
            from turn in Unit
            let radius = Math.Pow(10.0, (power * 9.0) - 8.3)
            let direction = Math.SinCos(turn * Math.Tau)
            select new PlanePoint(radius * direction.Sin, radius * direction.Cos)
        ).ToArbitrary();

    /// <summary>Places in and around a picture of a few thousand pixels.</summary>
    public static Arbitrary<PixelPosition> PixelPositions() =>
        (
            from x in Unit
            from y in Unit
            select new PixelPosition((x * 8000.0) - 2000.0, (y * 6000.0) - 1500.0)
        ).ToArbitrary();

    public static Arbitrary<SkyDirection> SkyDirections() => Direction.ToArbitrary();

    public static Arbitrary<PositionAngle> PositionAngles() =>
        Unit.Select(unit => PositionAngle.FromDegrees(unit * 360.0)).ToArbitrary();

    public static Arbitrary<DecimalCount> DecimalCounts() =>
        Gen.Choose(0, Sexagesimal.MostDecimals)
            .Select(count => new DecimalCount(count))
            .ToArbitrary();

    private static SkyDirection Even(double ra, double z) =>
        SkyDirection.FromRaDec(
            Angle.FromDegrees(ra * 360.0),
            Angle.FromRadians(Math.Asin((2.0 * z) - 1.0))
        );
}
