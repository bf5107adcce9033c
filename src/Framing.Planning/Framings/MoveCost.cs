using Framing.Sky;

namespace Framing.Planning;

/// <summary>What it costs to move a mount from one place to another, ending from its finish side.</summary>
/// <param name="handling">The mount; null for one that finishes west and north, without backlash.</param>
internal sealed class MoveCost(MountHandling? handling)
{
    /// <summary>Two more holds of a key, for an axis that goes past its place and comes back; a hold is 2 to 20 s.</summary>
    private const double SecondsPast = 20.0;

    /// <summary>How far past: this many times the backlash.</summary>
    private const double BacklashesPast = 2.0;

    /// <summary>A difference below this, in radians, is no move: a second of arc.</summary>
    private const double NoMove = 5e-6;

    private readonly AxisHandling rightAscension =
        handling?.RightAscension ?? new(MountDirection.West, Angle.Zero);

    private readonly AxisHandling declination =
        handling?.Declination ?? new(MountDirection.North, Angle.Zero);

    private readonly double rate =
        (handling?.Speeds.Max(speed => speed.Sidereal) ?? 60.0) * 2.0 * Math.PI / 86164.0905;

    /// <summary>Seconds of a move, one axis after the other at the fastest speed.</summary>
    public double Seconds(SkyDirection from, SkyDirection to)
    {
        var (east, north) = Axes(from, to);
        return OfAxis(east, rightAscension) + OfAxis(north, declination);
    }

    /// <summary>True when an axis has to go past its place to end from its finish side.</summary>
    public bool GoesPast(SkyDirection from, SkyDirection to)
    {
        var (east, north) = Axes(from, to);
        return IsAgainst(east, rightAscension) || IsAgainst(north, declination);
    }

    private static (double East, double North) Axes(SkyDirection from, SkyDirection to) =>
        (
            (to.RightAscension - from.RightAscension).WrappedSigned.Radians,
            (to.Declination - from.Declination).Radians
        );

    private static bool IsAgainst(double way, AxisHandling axis) =>
        Math.Abs(way) > NoMove
        && way > 0.0 != axis.Finish is MountDirection.East or MountDirection.North;

    private double OfAxis(double way, AxisHandling axis) =>
        (Math.Abs(way) / rate)
        + (
            IsAgainst(way, axis)
                ? SecondsPast + (2.0 * BacklashesPast * axis.Backlash.Radians / rate)
                : 0.0
        );
}
