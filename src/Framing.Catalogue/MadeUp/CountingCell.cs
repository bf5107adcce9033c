using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>A cell between two parallels and two meridians.</summary>
/// <param name="Number">Its number, south to north and west to east.</param>
/// <param name="WestDegrees">Right ascension of its western edge.</param>
/// <param name="WidthDegrees">Its extent in right ascension.</param>
/// <param name="SouthDegrees">Declination of its southern edge.</param>
/// <param name="NorthDegrees">Declination of its northern edge.</param>
internal readonly record struct CountingCell(
    int Number,
    double WestDegrees,
    double WidthDegrees,
    double SouthDegrees,
    double NorthDegrees
)
{
    public double SinSouth => Math.Sin(Angle.FromDegrees(SouthDegrees).Radians);

    public double SinNorth => Math.Sin(Angle.FromDegrees(NorthDegrees).Radians);

    public double SquareDegrees =>
        Angle.FromRadians(1.0).Degrees * WidthDegrees * (SinNorth - SinSouth);

    public SkyDirection Middle => At(0.5, 0.5);

    /// <summary>The radius of a cone about the middle that holds the cell: its corners are farthest.</summary>
    public Angle Radius =>
        Angle.Max(Middle.SeparationTo(At(0.0, 0.0)), Middle.SeparationTo(At(0.0, 1.0)))
        + Angle.FromArcseconds(1.0);

    /// <summary>The place that has shares of the cell's area to its west and south.</summary>
    public SkyDirection At(double west, double south)
    {
        var sin = Math.Clamp(SinSouth + ((SinNorth - SinSouth) * south), -1.0, 1.0);
        return SkyDirection.FromRaDec(
            Angle.FromDegrees(WestDegrees + (WidthDegrees * west)),
            Angle.FromRadians(Math.Asin(sin))
        );
    }
}
