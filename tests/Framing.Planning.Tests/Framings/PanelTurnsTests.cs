using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class PanelTurnsTests
{
    /// <summary>4.5 by 3.0 degrees, as in the worked mosaics of tests/reference/mosaics/t03_mosaic.py.</summary>
    private static readonly Rig WorkedRig = new(
        250.0,
        new Sensor(4000, 2665, 250_000.0 * 2.0 * Math.Tan(Math.PI / 80.0) / 4000.0)
    );

    [Theory]
    [InlineData(45.0, 3.8999, 3.7313, 34.8)]
    [InlineData(60.0, 6.8467, 6.3448, 30.6)]
    [InlineData(80.0, 23.3833, 18.5645, 12.8)]
    public void Of_WorkedMosaic_AreThoseOfTheTable(
        double declination,
        double north,
        double south,
        double leftAlone
    )
    {
        // By tests/reference/mosaics: "PA of grid up" of the outer columns, the least side-by-side overlap of layout a, and
        // 40.6 arcmin of layout b. Rows differ by one part in 4,000 from 3.0 degrees here.
        var plan = Requests.Framed(Worked(declination));

        // The pole that the mount turns about stands up to 20 arcsec off, for aberration.
        var room = 0.01 + (40.0 / 3600.0 / Math.Cos(Angle.FromDegrees(declination).Radians));
        double[] expected = [north, 0.0, -north, south, 0.0, -south];
        Assert.All(
            plan.Turns!.ToGrid.Zip(expected),
            pair => Assert.Equal(pair.Second, pair.First.Degrees, room)
        );
        Assert.Equal(leftAlone, plan.Turns.OverlapLeftAlone.Arcminutes, 0.2);
        Assert.Equal(40.6, plan.Turns.OverlapTurned.Arcminutes, 0.1);
        Assert.True(plan.Turns.GainsOverlap);
        Assert.Equal(north, plan.Turns.Largest.Degrees, room);
        Assert.NotEmpty(plan.ThinOverlaps);
    }

    [Fact]
    public void Of_AMirroredRig_RunTheOtherWay()
    {
        var request = Worked(60.0);
        var mirrored = request with
        {
            Rig = new(request.Rig.FocalLengthMillimetres, request.Rig.Sensor, mirrored: true),
        };

        // Panel 1 of a mirrored picture stands in the west.
        var turns = Requests.Framed(mirrored).Turns!.ToGrid;

        Assert.Equal(6.8467, turns[0].Degrees, 0.04);
        Assert.Equal(-6.8467, turns[2].Degrees, 0.04);
    }

    [Fact]
    public void IsWorthIt_HangsOnWhatThePlanNeeds()
    {
        var calm = Requests.Framed(Worked(60.0)).Turns!;
        var wild = Requests.Framed(Worked(60.0) with { Errors = Errors(8.0, 1.0) }).Turns!;
        var coarse = Requests.Framed(Worked(60.0) with { Errors = Errors(8.0, 20.0) }).Turns!;
        var equator = Requests.Framed(Worked(0.0)).Turns!;

        // Without errors it closes as it is; with them not; an angle that is set no better than the turn gains nothing.
        Assert.Equal(
            (true, true, false),
            (calm.GainsOverlap, calm.ClosesLeftAlone, calm.IsWorthIt)
        );
        Assert.Equal(
            (true, false, true),
            (wild.GainsOverlap, wild.ClosesLeftAlone, wild.IsWorthIt)
        );
        Assert.Equal((false, false), (coarse.GainsOverlap, coarse.IsWorthIt));
        Assert.Equal((false, false), (equator.GainsOverlap, equator.IsWorthIt));
    }

    [Fact]
    public void Of_APlanThatTurns_SaysWhatItWouldBeLeftAlone()
    {
        var alone = Requests.Framed(Worked(60.0) with { Errors = Errors(8.0, 1.0) }).Turns!;
        var turned = Requests
            .Framed(Worked(60.0) with { Errors = Errors(8.0, 1.0), TurnCameraAtEachPanel = true })
            .Turns!;

        Assert.Equal(alone.ToGrid, turned.ToGrid);
        Assert.Equal(alone.MostLost, turned.MostLost);
        Assert.Equal(alone.OverlapLeftAlone, turned.OverlapLeftAlone);
        Assert.Equal(alone.IsWorthIt, turned.IsWorthIt);
    }

    [Fact]
    public void Of_SinglePanel_IsNull() =>
        Assert.Null(Requests.Framed(Requests.Of(Requests.Box(40.0, 60.0, 1.0, 1.0, 0.0))).Turns);

    private static PanelErrors Errors(double arcminutes, double degrees) =>
        new(Angle.FromArcminutes(arcminutes), Angle.FromDegrees(degrees), default, default);

    private static FramingRequest Worked(double declination) =>
        Requests.Of(
            Requests.Box(100.0, declination, 2.0, 2.0, 0.0),
            grid: GridWish.Fixed(3, 2)
        ) with
        {
            Rig = WorkedRig,
            FixedCentre = SkyDirection.FromDegrees(100.0, declination),

            // The pole of date is that of the frame then.
            At = new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc),
        };
}
