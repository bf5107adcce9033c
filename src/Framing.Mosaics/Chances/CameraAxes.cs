using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A camera on the sky: the directions right and up in its displayed picture, and the one it looks along.</summary>
internal readonly record struct CameraAxes(Vector3D Right, Vector3D Up, Vector3D Forward)
{
    /// <summary>The axes of a pose.</summary>
    public static CameraAxes Of(CameraPose pose, bool mirrored)
    {
        var (sin, cos) = Math.SinCos(pose.PositionAngle.Radians);
        var (east, north) = (pose.Centre.East, pose.Centre.North);
        var right = (north * sin) - (east * cos);
        return new(mirrored ? -right : right, (east * sin) + (north * cos), pose.Centre.Vector);
    }

    /// <summary>The camera moved along its own axes by tangents, on the shortest way, and then turned.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public CameraAxes Moved(double right, double up, double turn)
    {
        // The shortest turn that takes (0, 0, 1) to (a, b, c).
        var c = 1.0 / Math.Sqrt(1.0 + (right * right) + (up * up));
        var (a, b) = (right * c, up * c);
        var k = 1.0 / (1.0 + c);
        var x = (Right * (1.0 - (a * a * k))) - (Up * (a * b * k)) - (Forward * a);
        var y = (Up * (1.0 - (b * b * k))) - (Right * (a * b * k)) - (Forward * b);
        var z = (Right * a) + (Up * b) + (Forward * c);
        if (turn == 0.0)
        {
            return new(x, y, z);
        }

        var (sin, cos) = Math.SinCos(turn);
        return new((x * cos) + (y * sin), (y * cos) - (x * sin), z);
    }

    /// <summary>A direction in this camera: right, up and along, not normalised.</summary>
    public Vector3D See(Vector3D v) => new(Right.Dot(v), Up.Dot(v), Forward.Dot(v));

    /// <summary>The direction, not normalised, of a place in the camera's plane.</summary>
    public Vector3D Place(double right, double up) => (Right * right) + (Up * up) + Forward;
}
