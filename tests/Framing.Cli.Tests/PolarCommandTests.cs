using System.Globalization;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>Frames of a camera on a mount whose axis misses the pole, worked in vectors of hour angle and declination.</summary>
public sealed class PolarCommandTests
{
    private const double LatitudeDeg = 46.0;

    [Theory]
    [InlineData(46.0, -12.0, 8.0, "Raise the wedge 12′, swing it 8′ west.")]
    [InlineData(46.0, 30.0, -20.0, "Lower the wedge 30′, swing it 20′ east.")]
    [InlineData(-33.0, 15.0, -40.0, "Lower the wedge 15′, swing it 40′ east.")]
    [InlineData(-33.0, -15.0, 40.0, "Raise the wedge 15′, swing it 40′ west.")]
    [InlineData(46.0, 1.0, 0.8, "Leave it")]
    public void Polar_FromTwoFrames_SaysWhatToDoToTheWedge(
        double latitude,
        double high,
        double east,
        string words
    )
    {
        using var session = new Session();
        var frames = Frames(session, latitude, high, east, [0.0, 60.0]);
        var site = Site(session, latitude);
        var outcome = session.Run("polar", frames[0], frames[1], "--site", site);
        Assert.Equal(0, outcome.Code);
        Assert.True(outcome.Words.Contains(words, StringComparison.Ordinal), outcome.Words);

        var json = session.Run("polar", frames[0], frames[1], "--site", site, "--json").Json();
        Assert.Equal(high, json.GetProperty("tooHighArcmin").GetDouble(), 0.3);
        Assert.Equal(east, json.GetProperty("tooFarEastArcmin").GetDouble(), 0.5);
        Assert.InRange(json.GetProperty("tooHighSigmaArcmin").GetDouble(), 0.05, 30.0);
    }

    [Fact]
    public void Polar_WithAPlan_FeedsItsPolarError()
    {
        using var session = new Session();
        var frames = Frames(session, LatitudeDeg, -12.0, 0.0, [0.0, 40.0, 80.0]);
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(
                SkyDirection.FromDegrees(40.0, 61.0),
                20.0,
                "[site]\nlatitude_deg = 46\nlongitude_deg = 8\npressure_hpa = 200\n\n[mount]\npolar_error_arcmin = 30 # guessed"
            )
        );
        var outcome = session.Run(["polar", .. frames, "--plan", plan]);
        Assert.Equal(0, outcome.Code);
        Assert.Matches(@"polar_error_arcmin = 1[12]\.\d # guessed", File.ReadAllText(plan));
    }

    [Fact]
    public void Polar_FramesHardlyTurned_EndsInThree()
    {
        using var session = new Session();
        var frames = Frames(session, LatitudeDeg, 5.0, 0.0, [0.0, 3.0]);
        var outcome = session.Run(["polar", .. frames, "--site", Site(session, LatitudeDeg)]);
        Assert.Equal(3, outcome.Code);
        Assert.Contains("turn it by 30° to 90°", outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Polar_WithoutASite_AsksForIt()
    {
        using var session = new Session();
        var frames = Frames(session, LatitudeDeg, 5.0, 0.0, [0.0, 60.0]);
        var outcome = session.Run(["polar", .. frames]);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("--site FILE", outcome.Error, StringComparison.Ordinal);
    }

    private static string Site(Session session, double latitude) =>
        session.Write(
            "site.toml",
            string.Create(
                CultureInfo.InvariantCulture,
                $"latitude_deg = {latitude}\nlongitude_deg = 8\npressure_hpa = 200\n"
            )
        );

    /// <summary>
    /// A camera turned about the axis by angles. The air is as thin as a site file allows, and is reckoned with as 12″ times
    /// the tangent of the zenith distance: it lifts what is seen.
    /// </summary>
    private static string[] Frames(
        Session session,
        double latitude,
        double highArcmin,
        double eastArcmin,
        double[] turns
    )
    {
        var north = latitude > 0.0 ? 1.0 : -1.0;
        var pole = Math.Abs(latitude) + (12.0 / 3600.0 / Math.Tan(Radians(Math.Abs(latitude))));
        var altitude = Radians(pole + (highArcmin / 60.0));

        // Parts to the east, to the north and up.
        var azimuth = (north > 0.0 ? 0.0 : Math.PI) + (north * Radians(eastArcmin / 60.0));
        var axis = new Vector3D(
            Math.Cos(altitude) * Math.Sin(azimuth),
            Math.Cos(altitude) * Math.Cos(azimuth),
            Math.Sin(altitude)
        );
        var ahead = new Vector3D(0.55, -0.25 * north, 0.8).Unit();
        var up = axis - (ahead * axis.Dot(ahead));
        up = up.Unit();
        return
        [
            .. turns.Select(
                (turn, i) =>
                {
                    var at = MadeFrames.Evening.AddMinutes(2.0 * i);
                    var angle = -north * Radians(turn);
                    var (a, u) = (Turned(axis, ahead, angle), Turned(axis, up, angle));
                    var centre = Sky(a, latitude, at);
                    var above = Sky((a + (u * 1e-3)).Unit(), latitude, at);
                    return MadeFrames.Frame(
                        session,
                        string.Create(CultureInfo.InvariantCulture, $"{i}.fits"),
                        centre,
                        centre.PositionAngleTo(above).Degrees,
                        at
                    );
                }
            ),
        ];
    }

    /// <summary>The J2000 place that is seen in a direction of the ground.</summary>
    private static SkyDirection Sky(Vector3D seen, double latitude, DateTime at)
    {
        // Lowered by what the air lifts it.
        var zenith = Math.Acos(seen.Z);
        var lower = zenith + (Radians(12.0 / 3600.0) * Math.Tan(zenith));
        var flat = Math.Sin(lower) / Math.Sin(zenith);
        var v = new Vector3D(seen.X * flat, seen.Y * flat, Math.Cos(lower));
        var (sin, cos) = Math.SinCos(Radians(latitude));
        var declination = Math.Asin((v.Z * sin) + (v.Y * cos));
        var hourAngle = Math.Atan2(-v.X, (v.Z * cos) - (v.Y * sin));

        // Meeus, Astronomical Algorithms, 12.4, and 8° east.
        var days = (at - new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc)).TotalDays;
        var sidereal = Radians(280.46061837 + (360.98564736629 * days) + 8.0);
        return OfDateFrame
            .At(TerrestrialTime.FromUtc(at))
            .ToIcrs(
                SkyDirection.FromRaDec(
                    Angle.FromRadians(sidereal - hourAngle).Wrapped,
                    Angle.FromRadians(declination)
                )
            );
    }

    private static Vector3D Turned(Vector3D axis, Vector3D vector, double by)
    {
        var (sin, cos) = Math.SinCos(by);
        return (vector * cos)
            + (axis.Cross(vector) * sin)
            + (axis * (axis.Dot(vector) * (1.0 - cos)));
    }

    private static double Radians(double degrees) => double.DegreesToRadians(degrees);
}
