using Framing.Sky;

namespace Framing.Nights;

/// <summary>How much of its daily circle something spends above an altitude.</summary>
public static class ArcAbove
{
    /// <summary>Half of the arc: the hour angle at which a circle of constant declination passes an altitude.</summary>
    /// <param name="latitude">Geographic latitude, -90° to +90°.</param>
    /// <param name="declination">Declination of date, -90° to +90°.</param>
    /// <param name="trueAltitude">The altitude without air.</param>
    /// <returns>0 when it is never above, 180° when it always is.</returns>
    /// <remarks>cos H = (sin h − sin φ sin δ) / (cos φ cos δ): Meeus, Astronomical Algorithms (1998), chapter 15.</remarks>
    public static Angle Half(Angle latitude, Angle declination, Angle trueAltitude)
    {
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude.Radians);
        var (sinDeclination, cosDeclination) = Math.SinCos(declination.Radians);
        var above = Math.Sin(trueAltitude.Radians) - (sinLatitude * sinDeclination);
        var reach = Math.Max(0.0, cosLatitude * cosDeclination);
        return above >= reach ? Angle.Zero
            : above <= -reach ? Angle.FromDegrees(180.0)
            : Angle.FromRadians(Math.Acos(above / reach));
    }
}
