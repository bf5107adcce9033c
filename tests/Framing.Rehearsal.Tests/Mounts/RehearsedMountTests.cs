using Framing.Nights;
using Framing.Sky;

namespace Framing.Rehearsal.Tests.Mounts;

public sealed class RehearsedMountTests
{
    private static readonly DateTime Evening = new(2026, 12, 5, 20, 0, 0, DateTimeKind.Utc);
    private static readonly SkyDirection Place = SkyDirection.FromDegrees(40.0, 61.0);

    /// <summary>Seconds of arc that a key at sidereal rate moves the axis in a second (15.041069; Aoki and others 1982).</summary>
    private const double Sidereal = 15.041069;

    [Fact]
    public void GoTo_PerfectMountWithoutAir_PointsWhereItWasTold()
    {
        var mount = Mount(new() { CameraAngle = PositionAngle.FromDegrees(30.0) }, pressure: 0.0);

        var pose = Told(mount, Place).Pose;

        Assert.InRange(pose.Centre.SeparationTo(Place).Arcseconds, 0.0, 0.2);

        // The camera hangs on the pole of date: against J2000's north that is a turn of some tenths of a degree here.
        var frame = OfDateFrame.At(TerrestrialTime.FromUtc(Evening));
        var expected = 30.0 + frame.NorthOfDateAt(Place).Degrees;
        Assert.InRange(Wrapped(pose.PositionAngle.Degrees - expected), -0.01, 0.01);
    }

    [Fact]
    public void GoTo_WrongIndex_PointsAsideBySoMuch()
    {
        var errors = new HiddenErrors
        {
            PointsTooFarEast = Angle.FromArcminutes(20.0),
            PointsTooFarNorth = Angle.FromArcminutes(-12.0),
        };
        var perfect = Told(Mount(new(), pressure: 0.0), Place);
        var wrong = Told(Mount(errors, pressure: 0.0), Place);

        var (from, to) = (OfDate(perfect), OfDate(wrong));
        Assert.InRange(
            (to.RightAscension - from.RightAscension).WrappedSigned.Arcminutes,
            19.99,
            20.01
        );
        Assert.InRange((to.Declination - from.Declination).Arcminutes, -12.01, -11.99);
    }

    [Theory]
    [InlineData(MountKey.East, true, 61.0 - 1.0, 0.0)]
    [InlineData(MountKey.East, false, 60.0 + 1.0, 0.0)]
    [InlineData(MountKey.West, true, -60.0, 0.0)]
    [InlineData(MountKey.West, false, -59.0, 0.0)]
    [InlineData(MountKey.North, true, 0.0, 60.0)]
    [InlineData(MountKey.South, false, 0.0, -60.0)]
    public void Hold_AtSixtyTimesSidereal_MovesTheAxisSoFast(
        MountKey key,
        bool adds,
        double east,
        double north
    )
    {
        // A key that takes the place of the drive lets the sky run on: one more east, one less west.
        var mount = Told(Mount(new() { KeyAddsToTracking = adds }, pressure: 0.0), Place);

        var (from, to) = (OfDate(mount), OfDate(mount.Hold(key, 60.0, 10.0)));

        Assert.InRange(
            (to.RightAscension - from.RightAscension).WrappedSigned.Arcseconds / (10.0 * Sidereal),
            east - 0.01,
            east + 0.01
        );
        Assert.InRange(
            (to.Declination - from.Declination).Arcseconds / (10.0 * Sidereal),
            north - 0.01,
            north + 0.01
        );
    }

    [Fact]
    public void Hold_RateError_MovesByTheTrueRate()
    {
        var mount = Told(Mount(new() { DeclinationRate = 0.9 }, pressure: 0.0), Place);

        var moved =
            OfDate(mount.Hold(MountKey.North, 20.0, 10.0)).Declination - OfDate(mount).Declination;

        Assert.InRange(moved.Arcseconds, 0.899 * 200.0 * Sidereal, 0.901 * 200.0 * Sidereal);
    }

    [Fact]
    public void Hold_BackAndForth_PlayIsLostOnceEachWay()
    {
        var errors = new HiddenErrors { DeclinationBacklash = Angle.FromArcminutes(3.0) };
        var mount = Told(Mount(errors, pressure: 0.0), Place);
        var start = OfDate(mount).Declination;

        // It came to rest moving north: north goes at once, south loses the play first.
        var north = mount.Hold(MountKey.North, 60.0, 20.0);
        var south = mount.Hold(MountKey.South, 60.0, 20.0);
        var back = north.Hold(MountKey.South, 60.0, 20.0);
        var step = 20.0 * 60.0 * Sidereal / 60.0;

        Assert.InRange((OfDate(north).Declination - start).Arcminutes, step - 0.05, step + 0.05);
        Assert.InRange((start - OfDate(south).Declination).Arcminutes, step - 3.05, step - 2.95);
        Assert.InRange((OfDate(back).Declination - start).Arcminutes, 2.95, 3.05);
    }

    [Fact]
    public void Hold_EastThenWest_FromTheSameFlankPlayDoesNotMatter()
    {
        var errors = new HiddenErrors { RightAscensionBacklash = Angle.FromArcminutes(3.0) };
        var with = Told(Mount(errors, pressure: 0.0), Place);
        var without = Told(Mount(new(), pressure: 0.0), Place);

        var moved = OfDate(Both(with)).RightAscension - OfDate(with).RightAscension;
        var plain = OfDate(Both(without)).RightAscension - OfDate(without).RightAscension;

        Assert.InRange((moved - plain).WrappedSigned.Arcminutes, -0.02, 0.02);

        static RehearsedMount Both(RehearsedMount mount) =>
            mount.Hold(MountKey.East, 60.0, 20.0).Hold(MountKey.West, 20.0, 18.0);
    }

    [Fact]
    public void Wait_AxisBesideThePole_FieldDriftsAndTurns()
    {
        var aligned = Told(Mount(new()), Place);
        var errors = new HiddenErrors { AxisTooHigh = Angle.FromArcminutes(30.0) };
        var askew = Told(Mount(errors), Place);

        var still = aligned.Pose.Centre.SeparationTo(aligned.Wait(3600.0).Pose.Centre);
        var drift = askew.Pose.Centre.SeparationTo(askew.Wait(3600.0).Pose.Centre);

        // Refraction alone moves a star by less than an arcminute; 30' of polar error by up to 7.9' in an hour.
        Assert.InRange(still.Arcminutes, 0.0, 1.0);
        Assert.InRange(drift.Arcminutes, 3.0, 8.5);
    }

    [Theory]
    [InlineData(46.2, 12.0, -20.0)]
    [InlineData(46.2, -35.0, 50.0)]
    [InlineData(-31.0, 25.0, 15.0)]
    [InlineData(-31.0, -8.0, -60.0)]
    public void Pose_TurnedInRightAscensionAlone_AxisIsFoundByTheRulesOfTheNight(
        double latitude,
        double tooHigh,
        double clockwise
    )
    {
        var errors = new HiddenErrors
        {
            AxisTooHigh = Angle.FromArcminutes(tooHigh),
            AxisTooFarClockwise = Angle.FromArcminutes(clockwise),
            CameraAngle = PositionAngle.FromDegrees(77.0),
        };
        var site = new MountSite(Angle.FromDegrees(latitude), Angle.FromDegrees(8.1), 830.0, -4.0);
        var mount = new RehearsedMount(site, errors, new() { Time = Evening });
        var frames = new List<AxisFrame>();
        foreach (var hour in (double[])[-2.0, 0.5, 2.5])
        {
            // The same declination typed each time: only the axis of right ascension turns.
            mount = mount.GoTo(
                SkyDirection.FromDegrees(
                    (SiderealHours(Evening, 8.1) - hour) * 15.0,
                    latitude > 0.0 ? 55.0 : -55.0
                ),
                finishNorth: true
            );
            frames.Add(
                new(
                    mount.Pose,
                    mount.State.Time,
                    Angle.FromArcseconds(1.0),
                    Angle.FromArcseconds(10.0)
                )
            );
        }

        var observer = new ObservingSite(
            Angle.FromDegrees(latitude),
            Angle.FromDegrees(8.1),
            1650.0,
            new(830.0, -4.0)
        );
        var found = PolarAxis.Find(observer, frames).Finding!;

        // Two models of the air, two ways to the sidereal time: agreement to a tenth of a minute of arc.
        Assert.InRange(found.TooHigh.Arcminutes, tooHigh - 0.15, tooHigh + 0.15);
        Assert.InRange(found.TooFarClockwise.Arcminutes, clockwise - 0.3, clockwise + 0.3);

        // Put right by what was found, hardly anything is left.
        var right = mount.MoveAxis(-found.TooHigh, -found.TooFarClockwise);
        Assert.InRange((right.State.Raised + errors.AxisTooHigh).Arcminutes, -0.15, 0.15);
    }

    [Fact]
    public void TurnCamera_ByTenDegrees_PictureIsTurnedBySoMuch()
    {
        var mount = Told(Mount(new()), Place);

        var turned = mount.TurnCamera(Angle.FromDegrees(10.0));

        Assert.InRange(
            Wrapped(turned.Pose.PositionAngle.Degrees - mount.Pose.PositionAngle.Degrees),
            9.95,
            10.05
        );
        Assert.InRange(turned.Pose.Centre.SeparationTo(mount.Pose.Centre).Arcminutes, 0.01, 8.0);
    }

    [Fact]
    public void Draw_ManySeeds_ErrorsAsLargeAsExpected()
    {
        var usual = new UsualErrors
        {
            Latitude = Angle.FromDegrees(46.0),
            PolarError = Angle.FromArcminutes(15.0),
            Pointing = Angle.FromArcminutes(20.0),
            Scatter = Angle.FromArcminutes(1.0),
            CameraAngle = PositionAngle.FromDegrees(20.0),
            TurnSigma = Angle.FromDegrees(0.5),
            RightAscensionBacklash = Angle.FromArcminutes(3.0),
            DeclinationBacklash = Angle.FromArcminutes(3.0),
            KeyAddsToTracking = false,
        };
        var drawn = Enumerable
            .Range(0, 500)
            .Select(seed => HiddenErrors.Draw((ulong)seed, usual))
            .ToList();

        Assert.All(
            drawn,
            errors =>
            {
                Assert.InRange(Math.Abs(errors.PointsTooFarEast.Arcminutes), 7.99, 50.01);
                Assert.InRange(errors.RightAscensionRate, 0.88, 1.12);
                Assert.InRange(Math.Abs(Wrapped(errors.CameraAngle.Degrees - 20.0)), 4.0, 25.0);
                Assert.False(errors.KeyAddsToTracking);
            }
        );
        var onSky = drawn.ConvertAll(errors =>
            double.Hypot(
                errors.AxisTooHigh.Arcminutes,
                errors.AxisTooFarClockwise.Arcminutes * Math.Cos(46.0 * Math.PI / 180.0)
            )
        );
        Assert.InRange(onSky.Average(), 14.0, 16.0);
        Assert.Equal(drawn[3], HiddenErrors.Draw(3, usual));
    }

    [Fact]
    public void Hold_ForLessThanNoTime_Refused()
    {
        var mount = Mount(new());

        Assert.Throws<ArgumentOutOfRangeException>(() => mount.Hold(MountKey.East, 4.0, -1.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => mount.Hold(MountKey.East, 0.0, 1.0));
        Assert.Throws<ArgumentException>(() =>
            new RehearsedMount(
                default,
                new(),
                new() { Time = DateTime.SpecifyKind(Evening, DateTimeKind.Local) }
            )
        );
    }

    private static RehearsedMount Mount(HiddenErrors errors, double pressure = 1010.0) =>
        new(
            new(Angle.FromDegrees(46.2), Angle.FromDegrees(8.1), pressure),
            errors,
            new() { Time = Evening }
        );

    /// <summary>Types a place as coordinates of date.</summary>
    private static RehearsedMount Told(RehearsedMount mount, SkyDirection icrs) =>
        mount.GoTo(
            OfDateFrame.At(TerrestrialTime.FromUtc(mount.State.Time)).ToOfDate(icrs),
            finishNorth: true
        );

    private static SkyDirection OfDate(RehearsedMount mount) =>
        OfDateFrame.At(TerrestrialTime.FromUtc(mount.State.Time)).ToOfDate(mount.Pose.Centre);

    /// <summary>Greenwich mean sidereal time and longitude, hours: 6.697374558 + 0.06570982441908 D0 + 1.00273790935 H (from memory).</summary>
    private static double SiderealHours(DateTime utc, double longitude)
    {
        var days = (utc.Date - new DateTime(2000, 1, 1)).TotalDays - 0.5;
        var hours =
            6.697374558
            + (0.06570982441908 * days)
            + (1.00273790935 * utc.TimeOfDay.TotalHours)
            + (longitude / 15.0);
        return hours % 24.0;
    }

    private static double Wrapped(double degrees) => Math.IEEERemainder(degrees, 360.0);
}
