using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>A simulated mount in vectors: an axis that misses the pole, a camera fixed to it anyhow, turned about the axis alone.</summary>
public sealed class PolarAxisTests
{
    private const int SetUps = 500;

    [Fact]
    public void Find_FiveHundredSetUps_IsRightWithinItsOwnSigma()
    {
        var within = 0;
        var close = 0;
        for (var run = 0; run < SetUps; run++)
        {
            var random = new Random(90_000 + run);
            var setUp = new SetUp(
                random,
                2.0 / 60.0 + (random.NextDouble() * random.NextDouble() * (3.0 - (2.0 / 60.0)))
            );
            var result = PolarAxis.Find(setUp.Site, setUp.Frames(random, 2 + (run % 2)));
            var finding = result.Finding!;
            Assert.Null(result.Refusal);
            var off = finding.TooHigh - setUp.TooHigh;
            within += off.Magnitude <= finding.TooHighSigma ? 1 : 0;
            var missed = Angle.FromRadians(
                double.Hypot(
                    off.Radians,
                    (finding.TooFarClockwise - setUp.TooFarClockwise).WrappedSigned.Radians
                        * Math.Cos(finding.Altitude.Radians)
                )
            );
            close += missed.Arcminutes <= 1.0 + (0.02 * setUp.Error.Arcminutes) ? 1 : 0;
        }

        // 68.3 % of 500 with a standard deviation of 2.1 %.
        Assert.InRange(within / (double)SetUps, 0.62, 0.745);
        Assert.InRange(close / (double)SetUps, 0.95, 1.0);
    }

    [Theory]
    [InlineData(47.0, 12.0, 0.0)]
    [InlineData(47.0, 0.0, -8.0)]
    [InlineData(-33.0, -20.0, 15.0)]
    [InlineData(68.0, 100.0, 120.0)]
    public void Find_FramesWithoutError_GivesTheAxisItself(
        double latitude,
        double high,
        double clockwise
    )
    {
        var random = new Random(5);
        var setUp = new SetUp(random, latitude, high, clockwise);
        var finding = PolarAxis.Find(setUp.Site, setUp.Frames(random, 3, 0.0)).Finding!;
        Assert.Equal(high, finding.TooHigh.Arcminutes, 0.02);
        Assert.Equal(clockwise, finding.TooFarClockwise.Arcminutes, 0.05);
        Assert.Equal(setUp.Error.Arcminutes, finding.Error.Arcminutes, 0.02);
        Assert.True(finding.Disagreement.Arcminutes < 0.02);
    }

    [Fact]
    public void Find_HardlyTurned_IsRefused()
    {
        var random = new Random(6);
        var setUp = new SetUp(random, 47.0, 12.0, 5.0);
        var frames = setUp.Frames(random, 2, 0.0);
        var result = PolarAxis.Find(
            setUp.Site,
            [frames[0], frames[0] with { Utc = frames[0].Utc.AddMinutes(1.0) }]
        );
        Assert.Null(result.Finding);
        Assert.Contains("turn it by 30° to 90°", result.Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_OtherAxisTurned_IsRefused()
    {
        // From a place on the meridian to one 40° further south: that turns about a horizontal axis.
        var site = new ObservingSite(
            Angle.FromDegrees(47.0),
            Angle.FromDegrees(8.0),
            500.0,
            AirConditions.Usual
        );
        var at = new DateTime(2026, 12, 5, 21, 0, 0, DateTimeKind.Utc);
        var moment = SiteMoment.Of(site, at);
        var high = moment.Frame.ToIcrs(
            SkyDirection.FromRaDec(moment.LocalSiderealTime, Angle.FromDegrees(50.0))
        );
        var low = moment.Frame.ToIcrs(
            SkyDirection.FromRaDec(moment.LocalSiderealTime, Angle.FromDegrees(10.0))
        );
        var result = PolarAxis.Find(
            site,
            [
                new(
                    new(high, PositionAngle.North),
                    at,
                    Angle.FromArcseconds(1.0),
                    Angle.FromArcseconds(5.0)
                ),
                new(
                    new(low, PositionAngle.North),
                    at,
                    Angle.FromArcseconds(1.0),
                    Angle.FromArcseconds(5.0)
                ),
            ]
        );
        Assert.Null(result.Finding);
        Assert.Contains("in right ascension alone", result.Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_CameraThatSlippedInItsRings_Disagrees()
    {
        var random = new Random(8);
        var setUp = new SetUp(random, 47.0, 12.0, 5.0);
        var frames = setUp.Frames(random, 3, 0.0);
        var slipped = frames[1].Pose.PositionAngle.TurnedBy(Angle.FromDegrees(1.0));
        frames[1] = frames[1] with { Pose = frames[1].Pose with { PositionAngle = slipped } };
        Assert.True(PolarAxis.Find(setUp.Site, frames).Finding!.Disagreement.Arcminutes > 5.0);
    }

    /// <summary>One mount: its axis, and a camera that looks somewhere and is turned somehow.</summary>
    private sealed class SetUp
    {
        private readonly Vector3D axis;
        private readonly DateTime start;

        public SetUp(Random random, double errorDeg)
        {
            var sign = random.NextDouble() < 0.5 ? -1.0 : 1.0;
            Site = At(sign * (20.0 + (45.0 * random.NextDouble())));
            var direction = Math.Tau * random.NextDouble();
            TooHigh = Angle.FromDegrees(errorDeg * Math.Cos(direction));
            var altitude = Pole + TooHigh;
            TooFarClockwise = Angle.FromDegrees(
                errorDeg * Math.Sin(direction) / Math.Cos(altitude.Radians)
            );
            axis = Axis();
            start = new DateTime(2026, 3, 1, 20, 0, 0, DateTimeKind.Utc).AddHours(
                2000.0 * random.NextDouble()
            );
        }

        public SetUp(Random random, double latitude, double highArcmin, double clockwiseArcmin)
        {
            Site = At(latitude);
            TooHigh = Angle.FromArcminutes(highArcmin);
            TooFarClockwise = Angle.FromArcminutes(clockwiseArcmin);
            axis = Axis();
            start = new DateTime(2026, 12, 5, 21, 0, 0, DateTimeKind.Utc).AddHours(
                random.NextDouble()
            );
        }

        public ObservingSite Site { get; }

        public Angle TooHigh { get; }

        public Angle TooFarClockwise { get; }

        public Angle Error
        {
            get
            {
                var (sin, cos) = Math.SinCos(Pole.Radians);
                var pole = new Vector3D(0.0, Site.Latitude.Radians > 0.0 ? cos : -cos, sin);
                return Angle.FromRadians(Math.Atan2(axis.Cross(pole).Length, axis.Dot(pole)));
            }
        }

        private Angle Pole =>
            Site.Latitude.Magnitude + Refraction.AtTrue(Site.Latitude.Magnitude, Site.Air);

        public List<AxisFrame> Frames(Random random, int count, double errors = 1.0)
        {
            // A start well above the horizon, turned by 30° to 90° in all, never below 20°.
            while (true)
            {
                var ahead = Unit(random);
                var any = Unit(random);
                var up = any - (ahead * any.Dot(ahead));
                up *= 1.0 / up.Length;
                var turn = double.DegreesToRadians(30.0 + (60.0 * random.NextDouble()));
                var frames = new List<AxisFrame>();
                for (var i = 0; i < count; i++)
                {
                    var by = turn * i / (count - 1);
                    var (a, u) = (Turned(ahead, by), Turned(up, by));
                    if (a.Z < Math.Sin(double.DegreesToRadians(20.0)) || a.Z > 0.999)
                    {
                        break;
                    }

                    frames.Add(Solved(random, a, u, start.AddMinutes(4.0 * i), errors));
                }

                if (frames.Count == count)
                {
                    return frames;
                }
            }
        }

        private static ObservingSite At(double latitude) =>
            new(
                Angle.FromDegrees(latitude),
                Angle.FromDegrees(8.0),
                800.0,
                new AirConditions(920.0, 5.0)
            );

        private AxisFrame Solved(
            Random random,
            Vector3D ahead,
            Vector3D up,
            DateTime at,
            double errors
        )
        {
            var moment = SiteMoment.Of(Site, at);
            var centre = Behind(moment, ahead);

            // Close to the middle, so that the bend of the air across the picture does not count: what a solution gives.
            var above = Behind(moment, ahead + (up * 0.002));
            var angle = centre.PositionAngleTo(above);
            const double centreSigma = 3.0;
            const double turnSigma = 20.0;
            centre = centre
                .Offset(
                    PositionAngle.North,
                    Angle.FromArcseconds(errors * centreSigma * Normal(random))
                )
                .Offset(
                    PositionAngle.East,
                    Angle.FromArcseconds(errors * centreSigma * Normal(random))
                );
            angle = angle.TurnedBy(Angle.FromArcseconds(errors * turnSigma * Normal(random)));
            return new(
                new(centre, angle),
                at,
                Angle.FromArcseconds(centreSigma),
                Angle.FromArcseconds(turnSigma)
            );
        }

        /// <summary>The catalogue place that is seen in a direction of the ground: by trial, through the sky over the site.</summary>
        private static SkyDirection Behind(SiteMoment moment, Vector3D ground)
        {
            ground *= 1.0 / ground.Length;
            var guess = SkyDirection.FromDegrees(
                moment.LocalSiderealTime.Degrees,
                moment.Site.Latitude.Degrees * 0.9
            );
            for (var round = 0; round < 60; round++)
            {
                // Where it is seen now, and where two steps aside are: a linear step towards where it should be seen.
                var here = Ground(moment.See(guess));
                var missing = ground - here;
                if (missing.Length < 1e-12)
                {
                    break;
                }

                const double step = 1e-4;
                var east =
                    (
                        Ground(
                            moment.See(guess.Offset(PositionAngle.East, Angle.FromRadians(step)))
                        ) - here
                    ) * (1.0 / step);
                var north =
                    (
                        Ground(
                            moment.See(guess.Offset(PositionAngle.North, Angle.FromRadians(step)))
                        ) - here
                    ) * (1.0 / step);
                var (ee, en, nn) = (east.Dot(east), east.Dot(north), north.Dot(north));
                var (me, mn) = (missing.Dot(east), missing.Dot(north));
                var determinant = (ee * nn) - (en * en);
                var de = ((me * nn) - (mn * en)) / determinant;
                var dn = ((mn * ee) - (me * en)) / determinant;
                var length = double.Hypot(de, dn);
                guess = guess.Offset(
                    PositionAngle.FromAngle(Angle.FromRadians(Math.Atan2(de, dn))),
                    Angle.FromRadians(Math.Min(length, 0.3))
                );
            }

            return guess;
        }

        private static Vector3D Ground(HorizontalPlace place)
        {
            var (sin, cos) = Math.SinCos(place.Altitude.Radians);
            var (sinAzimuth, cosAzimuth) = Math.SinCos(place.Azimuth.Radians);
            return new(cos * sinAzimuth, cos * cosAzimuth, sin);
        }

        private Vector3D Axis()
        {
            var (sin, cos) = Math.SinCos((Pole + TooHigh).Radians);
            var azimuth = TooFarClockwise.Radians + (Site.Latitude.Radians > 0.0 ? 0.0 : Math.PI);
            return new(cos * Math.Sin(azimuth), cos * Math.Cos(azimuth), sin);
        }

        /// <summary>Rodrigues: a vector turned about the axis.</summary>
        private Vector3D Turned(Vector3D vector, double by)
        {
            var (sin, cos) = Math.SinCos(by);
            return (vector * cos)
                + (axis.Cross(vector) * sin)
                + (axis * (axis.Dot(vector) * (1.0 - cos)));
        }

        private static Vector3D Unit(Random random)
        {
            var vector = new Vector3D(Normal(random), Normal(random), Normal(random));
            return vector * (1.0 / vector.Length);
        }

        private static double Normal(Random random) =>
            Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
            * Math.Cos(Math.Tau * random.NextDouble());
    }
}
