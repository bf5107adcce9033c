using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>Finds where a mount's polar axis points, from frames between which only the axis of right ascension turned.</summary>
/// <remarks>
/// <para>
/// Each frame gives the stand of the camera on the ground, through the air. Whatever lies in the axis keeps its place in all
/// of them: the axis is the direction whose images in the cameras' own axes agree best (least squares over all pairs). The
/// camera need not look anywhere near the pole, nor along the mount's declination axis.
/// </para>
/// <para>
/// The standard deviations carry those of the frames through, to first order. What they cannot know: a declination axis
/// that was touched, a camera that sagged, air that is not as its pressure and temperature say.
/// </para>
/// </remarks>
public static class PolarAxis
{
    /// <summary>The mount must turn by this much between the outermost frames: below it the axis is hardly to be seen.</summary>
    public static Angle LeastTurn => Angle.FromDegrees(10.0);

    /// <summary>An axis further from the pole than this is no misalignment: the declination axis was turned, too.</summary>
    public static Angle MostError => Angle.FromDegrees(20.0);

    /// <summary>Finds the axis.</summary>
    /// <param name="site">Where the mount stands.</param>
    /// <param name="frames">Two frames or more, within one evening.</param>
    /// <returns>The finding, or why there is none.</returns>
    /// <exception cref="ArgumentException">Fewer than two frames, or a time that is not UTC.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time outside the years 1901 to 2199.</exception>
    public static AxisResult Find(ObservingSite site, IReadOnlyList<AxisFrame> frames)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(frames);
        if (frames.Count < 2)
        {
            throw new ArgumentException("An axis needs two frames or more.", nameof(frames));
        }

        var moments = new SiteMoment[frames.Count];
        var cameras = new CameraAxes[frames.Count];
        for (var i = 0; i < moments.Length; i++)
        {
            moments[i] = SiteMoment.Of(site, frames[i].Utc);
            cameras[i] = CameraAxes.Of(moments[i], frames[i].Pose);
        }

        var pole = PoleOf(site);
        var turned = Turned(cameras);
        if (turned < LeastTurn)
        {
            return Refuse(
                $"the mount turned by only {turned.Degrees:0.0}° between the frames: turn it by 30° to 90° in right ascension alone"
            );
        }

        var axis = Common(cameras, pole);
        var error = Between(axis, pole);
        if (error > MostError)
        {
            return Refuse(
                $"what turned points {error.Degrees:0}° away from the pole: between the frames turn the mount in right ascension alone"
            );
        }

        return new(Finding(frames, moments, cameras, pole, axis, turned), null);
    }

    private static AxisFinding Finding(
        IReadOnlyList<AxisFrame> frames,
        SiteMoment[] moments,
        CameraAxes[] cameras,
        Vector3D pole,
        Vector3D axis,
        Angle turned
    )
    {
        var (high, clockwise) = Against(axis, pole);
        var error = Between(axis, pole);
        double highVariance = 0.0,
            clockwiseVariance = 0.0,
            errorVariance = 0.0;

        // Each frame's three uncertainties, one after the other, moved by one standard deviation.
        for (var i = 0; i < frames.Count; i++)
        {
            var frame = frames[i];
            for (var way = 0; way < 3; way++)
            {
                var pose = way switch
                {
                    0 => Shifted(frame.Pose, PositionAngle.North, frame.CentreSigma),
                    1 => Shifted(frame.Pose, PositionAngle.East, frame.CentreSigma),
                    _ => frame.Pose with
                    {
                        PositionAngle = frame.Pose.PositionAngle.TurnedBy(frame.TurnSigma),
                    },
                };
                var moved = (CameraAxes[])cameras.Clone();
                moved[i] = CameraAxes.Of(moments[i], pose);
                var other = Common(moved, pole);
                var (otherHigh, otherClockwise) = Against(other, pole);
                highVariance += Square(otherHigh - high);
                clockwiseVariance += Square((otherClockwise - clockwise).WrappedSigned);
                errorVariance += Square(Between(other, pole) - error);
            }
        }

        return new()
        {
            Altitude = AltitudeOf(axis),
            Azimuth = AzimuthOf(axis),
            TooHigh = high,
            TooHighSigma = Angle.FromRadians(Math.Sqrt(highVariance)),
            TooFarClockwise = clockwise,
            TooFarClockwiseSigma = Angle.FromRadians(Math.Sqrt(clockwiseVariance)),
            Error = error,
            ErrorSigma = Angle.FromRadians(Math.Sqrt(errorVariance)),
            Disagreement = Disagreement(cameras, axis),
            Turned = turned,
        };
    }

    /// <summary>The pose with its middle carried along a great circle, the picture carried with it.</summary>
    private static CameraPose Shifted(CameraPose pose, PositionAngle towards, Angle distance)
    {
        var centre = pose.Centre.Offset(towards, distance);
        var back = centre.PositionAngleTo(pose.Centre).Opposite;
        return new(centre, pose.PositionAngle.TurnedBy(towards.TurnTo(back)));
    }

    /// <summary>The pole as the air lifts it; the south pole from the southern half of the Earth.</summary>
    private static Vector3D PoleOf(ObservingSite site)
    {
        var altitude = site.Latitude.Magnitude;
        altitude += Refraction.AtTrue(altitude, site.Air);
        var (sin, cos) = Math.SinCos(altitude.Radians);
        return new(0.0, site.Latitude.Radians >= 0.0 ? cos : -cos, sin);
    }

    /// <summary>The largest of the angles by which the camera turned from one frame to another.</summary>
    private static Angle Turned(CameraAxes[] cameras)
    {
        var most = 0.0;
        for (var i = 0; i < cameras.Length; i++)
        {
            for (var j = i + 1; j < cameras.Length; j++)
            {
                // Half the skew part of the turn is the sine along its axis; its trace is 1 + 2 cos.
                var (a, b) = (cameras[i], cameras[j]);
                var skew = (a.Ahead.Cross(b.Ahead) + a.Up.Cross(b.Up) + a.Side.Cross(b.Side)) * 0.5;
                var cosine =
                    (a.Ahead.Dot(b.Ahead) + a.Up.Dot(b.Up) + a.Side.Dot(b.Side) - 1.0) / 2.0;
                most = Math.Max(most, Math.Atan2(skew.Length, cosine));
            }
        }

        return Angle.FromRadians(most);
    }

    /// <summary>The direction whose images in all cameras agree best, on the side of the pole.</summary>
    private static Vector3D Common(CameraAxes[] cameras, Vector3D pole)
    {
        // x' K x = |sum of the images|²: the largest eigenvector, by squaring K over and over. Its rival is smaller by the
        // cosine of half the turn, squared: 0.99 at 10°, gone after 14 squarings.
        var columns = new Vector3D[3];
        for (var k = 0; k < 3; k++)
        {
            var unit = new Vector3D(k == 0 ? 1.0 : 0.0, k == 1 ? 1.0 : 0.0, k == 2 ? 1.0 : 0.0);
            var image = default(Vector3D);
            foreach (var camera in cameras)
            {
                image += camera.Inside(unit);
            }

            foreach (var camera in cameras)
            {
                columns[k] += camera.Outside(image);
            }
        }

        for (var squaring = 0; squaring < 14; squaring++)
        {
            var squared = new Vector3D[3];
            for (var k = 0; k < 3; k++)
            {
                squared[k] = Times(columns, columns[k]);
            }

            var size = 1.0 / (squared[0].Length + squared[1].Length + squared[2].Length);
            for (var k = 0; k < 3; k++)
            {
                columns[k] = squared[k] * size;
            }
        }

        var largest = columns.MaxBy(column => column.Length);
        var axis = largest.Unit();
        return axis.Dot(pole) >= 0.0 ? axis : -axis;
    }

    private static Vector3D Times(Vector3D[] columns, Vector3D vector) =>
        (columns[0] * vector.X) + (columns[1] * vector.Y) + (columns[2] * vector.Z);

    private static Angle Disagreement(CameraAxes[] cameras, Vector3D axis)
    {
        var most = Angle.Zero;
        for (var i = 0; i < cameras.Length && cameras.Length > 2; i++)
        {
            for (var j = i + 1; j < cameras.Length; j++)
            {
                most = Angle.Max(most, Between(cameras[i].Inside(axis), cameras[j].Inside(axis)));
            }
        }

        return most;
    }

    private static (Angle High, Angle Clockwise) Against(Vector3D axis, Vector3D pole) =>
        (AltitudeOf(axis) - AltitudeOf(pole), (AzimuthOf(axis) - AzimuthOf(pole)).WrappedSigned);

    private static Angle AltitudeOf(Vector3D v) =>
        Angle.FromRadians(Math.Atan2(v.Z, double.Hypot(v.X, v.Y)));

    private static Angle AzimuthOf(Vector3D v) => Angle.FromRadians(Math.Atan2(v.X, v.Y)).Wrapped;

    private static Angle Between(Vector3D a, Vector3D b) =>
        Angle.FromRadians(Math.Atan2(a.Cross(b).Length, a.Dot(b)));

    private static double Square(Angle angle) => angle.Radians * angle.Radians;

    private static AxisResult Refuse(FormattableString why) =>
        new(null, why.ToString(CultureInfo.InvariantCulture));
}
