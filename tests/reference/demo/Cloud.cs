using Framing.Sky;

namespace Framing.DemoFrames;

/// <summary>An oval on the sky in which an invented nebula glows.</summary>
/// <param name="Centre">Its middle.</param>
/// <param name="Length">Its long axis.</param>
/// <param name="Breadth">Its short axis.</param>
/// <param name="Angle">Position angle of the long axis.</param>
/// <param name="Hollow">0 for a filled cloud, 1 for a shell.</param>
internal sealed record Cloud(
    SkyDirection Centre,
    Angle Length,
    Angle Breadth,
    PositionAngle Angle,
    double Hollow
)
{
    /// <summary>How strongly the cloud glows at a place, 0 to about 1, before any texture.</summary>
    public double At(SkyDirection place)
    {
        var distance = Centre.SeparationTo(place);
        var (sin, cos) = Math.SinCos(Centre.PositionAngleTo(place).Radians - Angle.Radians);
        var along = distance * cos / (Length * 0.5);
        var across = distance * sin / (Breadth * 0.5);
        var r2 = (along * along) + (across * across);
        var filled = Math.Exp(-1.1 * r2);
        var ring = Math.Exp(-Math.Pow((Math.Sqrt(r2) - 0.85) / 0.33, 2.0));
        return ((1.0 - Hollow) * filled) + (Hollow * ((0.8 * ring) + (0.35 * filled)));
    }
}
