using Framing.Sky;

namespace Framing.Nights;

/// <summary>How a camera stands on the ground: unit vectors with parts towards east, north and the zenith.</summary>
/// <param name="Ahead">Where it looks.</param>
/// <param name="Up">Up in its picture.</param>
/// <param name="Side">At right angles to both.</param>
internal readonly record struct CameraAxes(Vector3D Ahead, Vector3D Up, Vector3D Side)
{
    /// <summary>How far up in the picture the direction of up is taken from: wide enough to be safe from rounding.</summary>
    private static readonly Angle Reach = Angle.FromDegrees(0.25);

    /// <summary>The camera of a frame, through the air of the site.</summary>
    public static CameraAxes Of(SiteMoment moment, CameraPose pose)
    {
        var ahead = Seen(moment, pose.Centre);
        var above = Seen(moment, pose.Centre.Offset(pose.PositionAngle, Reach));
        var up = (above - (ahead * above.Dot(ahead))).Unit();
        return new(ahead, up, ahead.Cross(up));
    }

    /// <summary>A direction of the ground in the camera's own axes.</summary>
    public Vector3D Inside(Vector3D direction) =>
        new(direction.Dot(Ahead), direction.Dot(Up), direction.Dot(Side));

    /// <summary>A direction of the camera's axes on the ground.</summary>
    public Vector3D Outside(Vector3D inside) =>
        (Ahead * inside.X) + (Up * inside.Y) + (Side * inside.Z);

    private static Vector3D Seen(SiteMoment moment, SkyDirection icrs)
    {
        var place = moment.See(icrs);
        var (sinAltitude, cosAltitude) = Math.SinCos(place.Altitude.Radians);
        var (sinAzimuth, cosAzimuth) = Math.SinCos(place.Azimuth.Radians);
        return new(cosAltitude * sinAzimuth, cosAltitude * cosAzimuth, sinAltitude);
    }
}
