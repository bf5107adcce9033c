using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class StarTrailTests
{
    private static readonly Rig Lens = new(250.0, new(4144, 2822, 4.63));

    [Theory]
    [InlineData(null)]
    [InlineData(GuideStar.Centre)]
    [InlineData(GuideStar.Corner)]
    public void Longest_AndErrorFor_BothTrailByTheLimit(GuideStar? star)
    {
        var trail = Trail(star, 15.0, 61.0, 1.5);
        Assert.Equal(1.5, trail.Px(trail.Longest!.Value), 1e-6);
        var sub = TimeSpan.FromSeconds(180.0);
        Assert.Equal(1.5, Trail(star, trail.ErrorFor(sub).Arcminutes, 61.0, 1.5).Px(sub), 1e-9);
        Assert.Equal(star is not null, trail.IsGuided);
    }

    [Theory]
    [InlineData(0.0, 844, 422)]
    [InlineData(45.0, 597, 298)]
    [InlineData(70.0, 289, 144)]
    public void Longest_Guided_IsThatOfTheVectors(double declination, double centre, double corner)
    {
        // Seconds for one pixel of 3.76 µm, 15′ of error, 28 mm of diagonal: from rigid cameras turned as vectors.
        var rig = new Rig(300.0, new(5000, 5000, 28.0 / Math.Sqrt(2.0) / 5.0));
        var limit = 3.76 / rig.Sensor.PixelMicrometres;
        TimeSpan Longest(GuideStar star) =>
            StarTrail
                .Of(
                    new(
                        rig,
                        star,
                        Angle.FromArcminutes(15.0),
                        Angle.FromDegrees(declination),
                        limit
                    )
                )
                .Longest!.Value;
        Assert.Equal(centre, Longest(GuideStar.Centre).TotalSeconds, 0.01 * centre);
        Assert.Equal(corner, Longest(GuideStar.Corner).TotalSeconds, 0.01 * corner);
    }

    [Fact]
    public void Px_Unguided_IsTheWorstOfAllHourAngles()
    {
        // A dense search over the hour angle; the corner's motion is at most the sum of drift and turn.
        foreach (var declination in new[] { 0.0, 30.0, 61.0, 85.0 })
        {
            var trail = Trail(null, 15.0, declination, 1.0);
            var worst = 0.0;
            for (var hour = 0.0; hour <= 360.0; hour += 0.05)
            {
                var drift = PolarDrift.Of(
                    Angle.FromArcminutes(15.0),
                    Angle.Zero,
                    Angle.FromDegrees(hour),
                    Angle.FromDegrees(declination)
                );
                worst = Math.Max(
                    worst,
                    (250.0 * double.Hypot(drift.Declination, drift.HourAngle))
                        + (trail.CornerMillimetres * Math.Abs(drift.FreeRotation))
                );
            }

            var found = trail.Micrometres(TimeSpan.FromSeconds(1.0)) / 1000.0;
            Assert.Equal(worst, found, 1e-5 * worst);
        }
    }

    [Fact]
    public void Longest_WithoutAnError_HasNoEnd() =>
        Assert.Null(Trail(GuideStar.Centre, 0.0, 45.0, 1.0).Longest);

    [Fact]
    public void Creep_InAnHour_IsThatOfTheTable()
    {
        // 30′ of error: 7.9′ in an hour; never more than from one side of the circle to the other.
        var trail = Trail(null, 30.0, 60.0, 1.0);
        Assert.Equal(7.9, trail.Creep(TimeSpan.FromHours(1.0)).Arcminutes, 0.05);
        Assert.Equal(60.0, trail.Creep(TimeSpan.FromHours(30.0)).Arcminutes, 1e-9);
        Assert.Equal(
            2.0 * trail.Creep(TimeSpan.FromHours(1.0)).Arcminutes,
            trail.Turn(TimeSpan.FromHours(1.0)).Arcminutes,
            1e-9
        );
    }

    [Fact]
    public void Squeeze_AtThirtyDegrees_IsThatOfSaemundsson()
    {
        // Entry ovl-diffrefr-30: 20.939″ over 5° (ray integration 20.1″); 5.3″ level, from the table beside it.
        var squeeze = FieldSqueeze.Of(
            Angle.FromDegrees(30.0),
            Angle.FromDegrees(5.0),
            AirConditions.Usual
        );
        Assert.Equal(20.939, squeeze.Vertical.Arcseconds, 0.5);
        Assert.Equal(5.3, squeeze.Horizontal.Arcseconds, 0.1);
    }

    private static StarTrail Trail(GuideStar? star, double error, double dec, double limit) =>
        StarTrail.Of(new(Lens, star, Angle.FromArcminutes(error), Angle.FromDegrees(dec), limit));
}
