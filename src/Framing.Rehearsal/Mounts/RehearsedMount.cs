using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>A mount that does what it is told, as well as its hidden errors let it.</summary>
/// <remarks>
/// <para>
/// Immutable: each act gives the mount after it. Its axis stands beside the pole, it believes to point elsewhere than it
/// does, its gears have play, its keys are not as fast as their labels say, and the camera hangs on it at some angle.
/// </para>
/// <para>
/// Tracking is sidereal. While the drive takes up the play of its gear the axis rests and the sky runs on. What the telescope
/// looks at is lifted by the air (G. G. Bennett 1982, J. Navigation 35, 255), the pole too.
/// </para>
/// <para>It is vectors and gears, and shares no rule with what checks frames or finds the axis.</para>
/// </remarks>
public sealed class RehearsedMount
{
    private const double SlewSeconds = 40.0;
    private const double TurnSeconds = 60.0;
    private const double WedgeSeconds = 90.0;

    /// <summary>Radians that the sky turns in a second (86164.0905 s a turn).</summary>
    private const double Sidereal = 2.0 * Math.PI / 86164.0905;

    private readonly MountSite site;

    /// <summary>A mount in a state.</summary>
    /// <param name="site">Where it stands.</param>
    /// <param name="errors">What is wrong with it.</param>
    /// <param name="state">How it stands.</param>
    public RehearsedMount(MountSite site, HiddenErrors errors, MountState state)
    {
        ArgumentNullException.ThrowIfNull(errors);
        ArgumentNullException.ThrowIfNull(state);
        if (state.Time.Kind != DateTimeKind.Utc)
        {
            throw new ArgumentException("The time of a mount is UTC.", nameof(state));
        }

        (this.site, Errors, State) = (site, errors, state);
    }

    /// <summary>What is wrong with it.</summary>
    public HiddenErrors Errors { get; }

    /// <summary>How it stands.</summary>
    public MountState State { get; }

    /// <summary>Where the camera really looks and how the displayed picture is turned: ICRS.</summary>
    public CameraPose Pose
    {
        get
        {
            var frame = OfDateFrame.At(TerrestrialTime.FromUtc(State.Time));
            var sidereal = SiderealAngle(State.Time);
            var hour = State.RightAscension.Radians - sidereal;
            var (sinE, cosE) = Math.SinCos(hour);
            var (sinD, cosD) = Math.SinCos(State.Declination.Radians);
            var look = new Vector3D(cosD * cosE, cosD * sinE, sinD);
            var north = new Vector3D(-sinD * cosE, -sinD * sinE, cosD);
            var east = new Vector3D(-sinE, cosE, 0.0);
            var (sinUp, cosUp) = Math.SinCos(Errors.CameraAngle.Radians + State.Turned.Radians);
            var up = (north * cosUp) + (east * sinUp);

            // A short way up the picture says how it is turned on the sky.
            const double step = 1e-4;
            var middle = ToSky(look, frame, sidereal);
            var above = ToSky((look + (up * step)).Unit(), frame, sidereal);
            return new(middle, middle.PositionAngleTo(above));
        }
    }

    /// <summary>Types coordinates of date and lets the mount go there.</summary>
    /// <param name="ofDate">What was typed, as coordinates of date.</param>
    /// <param name="finishNorth">True when it comes to rest moving north, false when moving south.</param>
    /// <returns>The mount after it.</returns>
    public RehearsedMount GoTo(SkyDirection ofDate, bool finishNorth)
    {
        var random = new RandomStream(Errors.Seed, (ulong)State.Moves + 0x6070);
        var declination =
            ofDate.Declination + Errors.PointsTooFarNorth + (Errors.Scatter * random.Normal());
        return With(
            State with
            {
                Time = State.Time.AddSeconds(SlewSeconds),
                RightAscension =
                    ofDate.RightAscension
                    + Errors.PointsTooFarEast
                    + (Errors.Scatter * random.Normal()),
                Declination = Angle.FromDegrees(Math.Clamp(declination.Degrees, -90.0, 90.0)),
                RightAscensionPlay = Angle.Zero,
                DeclinationPlay = finishNorth ? Errors.DeclinationBacklash : Angle.Zero,
                Moves = State.Moves + 1,
            }
        );
    }

    /// <summary>Holds a key.</summary>
    /// <param name="key">Which one.</param>
    /// <param name="timesSidereal">The speed as its label promises, a multiple of the sidereal rate, more than 0.</param>
    /// <param name="seconds">How long, 0 or more.</param>
    /// <returns>The mount after it.</returns>
    public RehearsedMount Hold(MountKey key, double timesSidereal, double seconds)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(timesSidereal);
        ArgumentOutOfRangeException.ThrowIfNegative(seconds);
        var rate = timesSidereal * Sidereal;
        if (key is MountKey.North or MountKey.South)
        {
            var motor =
                (key == MountKey.North ? 1.0 : -1.0) * rate * Errors.DeclinationRate * seconds;
            var (moved, play) = Geared(
                motor,
                State.DeclinationPlay.Radians,
                Errors.DeclinationBacklash.Radians
            );
            return With(
                    State with
                    {
                        Declination = Angle.FromRadians(
                            Math.Clamp(
                                State.Declination.Radians + moved,
                                -Math.PI / 2.0,
                                Math.PI / 2.0
                            )
                        ),
                        DeclinationPlay = Angle.FromRadians(play),
                        Moves = State.Moves + 1,
                    }
                )
                .Wait(seconds);
        }

        var pressed = (key == MountKey.East ? 1.0 : -1.0) * rate * Errors.RightAscensionRate;
        return With(State with { Moves = State.Moves + 1 })
            .Run(Errors.KeyAddsToTracking ? pressed - Sidereal : pressed, seconds);
    }

    /// <summary>Lets time pass; the drive runs.</summary>
    /// <param name="seconds">How long, 0 or more.</param>
    /// <returns>The mount after it.</returns>
    public RehearsedMount Wait(double seconds)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seconds);
        return Run(-Sidereal, seconds);
    }

    /// <summary>Turns the camera by hand.</summary>
    /// <param name="angle">By how much its position angle is to grow.</param>
    /// <returns>The mount after it: the hand misses by a little, and the pointing shifts by a minute of arc or so.</returns>
    public RehearsedMount TurnCamera(Angle angle)
    {
        var random = new RandomStream(Errors.Seed, (ulong)State.Moves + 0x7042);
        var shift = Angle.FromArcminutes(1.5);
        return With(
                State with
                {
                    Turned = State.Turned + angle + (Errors.TurnSigma * random.Normal()),
                    RightAscension = State.RightAscension + (shift * random.Normal()),
                    Declination = Angle.FromDegrees(
                        Math.Clamp(
                            (State.Declination + (shift * random.Normal())).Degrees,
                            -90.0,
                            90.0
                        )
                    ),
                    Moves = State.Moves + 1,
                }
            )
            .Wait(TurnSeconds);
    }

    /// <summary>Sets the axis anew on its wedge or tripod head.</summary>
    /// <param name="raise">By how much it is raised; negative lowers it.</param>
    /// <param name="clockwise">By how much it is swung about the vertical, clockwise as seen from above.</param>
    /// <returns>The mount after it: what it points at has moved with the axis.</returns>
    public RehearsedMount MoveAxis(Angle raise, Angle clockwise) =>
        With(
                State with
                {
                    Raised = State.Raised + raise,
                    Swung = State.Swung + clockwise,
                    Moves = State.Moves + 1,
                }
            )
            .Wait(WedgeSeconds);

    /// <summary>Moves a motor through the play of its gear: how far the axis follows, and where in the play the motor ends.</summary>
    private static (double Moved, double Play) Geared(double motor, double play, double backlash)
    {
        var end = Math.Clamp(play + motor, 0.0, backlash);
        return (motor - (end - play), end);
    }

    /// <summary>Greenwich mean sidereal time and the longitude: the angle of rotation of IAU 2000, and precession since 2000.</summary>
    /// <remarks>
    /// N. Capitaine, P. T. Wallace and J. Chapront 2003, A&amp;A 412, 567: equation 42 without its cubes; UT1 taken for UTC,
    /// within 14″.
    /// </remarks>
    private double SiderealAngle(DateTime utc)
    {
        var days = (utc - new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc)).TotalDays;
        var turns = 0.7790572732640 + (0.00273781191135448 * days) + (days % 1.0);
        var centuries = days / 36525.0;
        var precession = (0.014506 + (4612.156534 * centuries)) / 1_296_000.0;
        return (2.0 * Math.PI * ((turns + precession) % 1.0)) + site.Longitude.Radians;
    }

    private RehearsedMount With(MountState state) => new(site, Errors, state);

    /// <summary>Runs the motor of right ascension: eastwards against the ground, radians a second.</summary>
    private RehearsedMount Run(double rate, double seconds)
    {
        var (moved, play) = Geared(
            rate * seconds,
            State.RightAscensionPlay.Radians,
            Errors.RightAscensionBacklash.Radians
        );
        return With(
            State with
            {
                Time = State.Time.AddSeconds(seconds),
                RightAscension = Angle
                    .FromRadians(State.RightAscension.Radians + (Sidereal * seconds) + moved)
                    .Wrapped,
                RightAscensionPlay = Angle.FromRadians(play),
            }
        );
    }

    /// <summary>From the mount's own axes to the sky: first to the ground, then through the air, then against the stars.</summary>
    private SkyDirection ToSky(Vector3D mount, OfDateFrame frame, double sidereal)
    {
        var seen = Carried(mount);
        var (sin, cos) = Math.SinCos(site.Latitude.Radians);
        var zenith = new Vector3D(cos, 0.0, sin);
        var altitude = Math.Asin(Math.Clamp(seen.Dot(zenith), -1.0, 1.0));
        var level = seen - (zenith * seen.Dot(zenith));
        if (level.Length > 1e-9)
        {
            var (sinH, cosH) = Math.SinCos(altitude - Refraction(altitude));
            seen = (level.Unit() * cosH) + (zenith * sinH);
        }

        var (sinS, cosS) = Math.SinCos(sidereal);
        return frame.ToIcrs(
            SkyDirection.FromVector(
                new((seen.X * cosS) - (seen.Y * sinS), (seen.X * sinS) + (seen.Y * cosS), seen.Z)
            )
        );
    }

    /// <summary>From the mount's axes to those of the ground (x on the meridian, y east, z the pole): the shortest turn that brings the axis there.</summary>
    private Vector3D Carried(Vector3D mount)
    {
        var axis = NorthEndOfAxis();
        var pole = new Vector3D(0.0, 0.0, 1.0);
        var across = pole.Cross(axis);
        var sin = across.Length;
        if (sin < 1e-15)
        {
            return mount;
        }

        var k = across * (1.0 / sin);
        var cos = pole.Dot(axis);
        return (mount * cos) + (k.Cross(mount) * sin) + (k * (k.Dot(mount) * (1.0 - cos)));
    }

    private Vector3D NorthEndOfAxis()
    {
        var south = site.Latitude.Radians < 0.0;
        var geometric = Math.Abs(site.Latitude.Radians);
        var high =
            geometric + Refraction(geometric) + Errors.AxisTooHigh.Radians + State.Raised.Radians;
        var azimuth =
            (south ? Math.PI : 0.0) + Errors.AxisTooFarClockwise.Radians + State.Swung.Radians;
        var (sin, cos) = Math.SinCos(site.Latitude.Radians);
        var north = new Vector3D(-sin, 0.0, cos);
        var zenith = new Vector3D(cos, 0.0, sin);
        var east = new Vector3D(0.0, 1.0, 0.0);
        var axis =
            (((north * Math.Cos(azimuth)) + (east * Math.Sin(azimuth))) * Math.Cos(high))
            + (zenith * Math.Sin(high));
        return south ? -axis : axis;
    }

    /// <summary>How far the air lifts what is seen at an altitude.</summary>
    private double Refraction(double altitude)
    {
        var degrees = Math.Max(altitude * 180.0 / Math.PI, 3.0);
        var angle = (degrees + (7.31 / (degrees + 4.4))) * Math.PI / 180.0;
        return Math.PI
            / 180.0
            / 60.0
            / Math.Tan(angle)
            * (site.PressureHectopascals / 1010.0)
            * (283.0 / (273.0 + site.TemperatureCelsius));
    }
}
