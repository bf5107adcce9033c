using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>The sky seen in a mirror that lies in the equator of date: whatever is north is south, and pictures are mirrored.</summary>
public sealed class MirroredSkyTests
{
    private static readonly OfDateFrame Time = OfDateFrame.At(
        TerrestrialTime.FromUtc(Checks.Evening)
    );

    [Fact]
    public void Check_MirroredPlanAtMinus45_GivesTheMirroredAnswer()
    {
        var random = new Random(45);
        for (var run = 0; run < 200; run++)
        {
            var panel = SkyDirection.FromDegrees(360.0 * random.NextDouble(), 45.0);
            var planned = 360.0 * random.NextDouble();
            var seen = panel.Offset(
                PositionAngle.FromDegrees(360.0 * random.NextDouble()),
                Angle.FromArcminutes(90.0 * random.NextDouble())
            );
            var angle = planned - 40.0 + (80.0 * random.NextDouble());
            var north = Answer(panel, planned, seen, angle, mirrored: false);
            var south = Answer(
                Mirrored(panel),
                180.0 - planned,
                Mirrored(seen),
                180.0 - angle,
                true
            );

            // The picture is the same one, and so is what the hands do to the camera; what the axes do is mirrored.
            Assert.Equal(north.TurnCamera.Degrees, south.TurnCamera.Degrees, 2e-4);
            Assert.Equal(north.EastNeeded.Arcminutes, south.EastNeeded.Arcminutes, 2e-3);
            Assert.Equal(north.NorthNeeded.Arcminutes, -south.NorthNeeded.Arcminutes, 2e-3);
            Assert.Equal(
                north.StarsMustMove.RightFraction,
                south.StarsMustMove.RightFraction,
                2e-5
            );
            Assert.Equal(north.StarsMustMove.UpFraction, south.StarsMustMove.UpFraction, 2e-5);
            Assert.Equal(north.Verdict, south.Verdict);
            Assert.Equal(north.Steps, south.Steps);
            Assert.Equal(
                north.Moves.Select(hold => Mirrored(hold.Towards)),
                south.Moves.Select(hold => hold.Towards)
            );
            Assert.All(
                north.Moves.Zip(south.Moves),
                pair => Assert.Equal(pair.First.Seconds, pair.Second.Seconds, 0.01)
            );
        }
    }

    /// <summary>The answer for a panel and a frame given against the axes of date.</summary>
    private static FrameCheck Answer(
        SkyDirection panel,
        double planned,
        SkyDirection seen,
        double angle,
        bool mirrored
    )
    {
        var plan = Checks.PlanAt(Time.ToIcrs(panel), J2000(panel, planned), mirrored);
        var frame = Checks.Frame(plan, Time.ToIcrs(seen), J2000(seen, angle));
        return Checks.Check(
            plan,
            frame,
            Checks.Handling with
            {
                // The finish side of the declination axis is mirrored, too.
                Declination = Checks.Handling.Declination with
                {
                    Finish = mirrored ? MountDirection.South : MountDirection.North,
                },
            }
        );
    }

    private static double J2000(SkyDirection ofDate, double angle) =>
        Time.ToIcrs(ofDate)
            .PositionAngleTo(
                Time.ToIcrs(
                    ofDate.Offset(PositionAngle.FromDegrees(angle), Angle.FromRadians(1e-4))
                )
            )
            .Degrees;

    private static SkyDirection Mirrored(SkyDirection place) =>
        SkyDirection.FromRaDec(place.RightAscension, -place.Declination);

    private static MountDirection Mirrored(MountDirection direction) =>
        direction switch
        {
            MountDirection.North => MountDirection.South,
            MountDirection.South => MountDirection.North,
            _ => direction,
        };
}
