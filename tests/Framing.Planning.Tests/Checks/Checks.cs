using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>Plans, mounts and frames to check.</summary>
internal static class Checks
{
    public static readonly DateTime Evening = new(2026, 12, 5, 21, 0, 0, DateTimeKind.Utc);

    public static MountHandling Handling { get; } =
        new()
        {
            RightAscension = new(MountDirection.West, Angle.FromArcminutes(3.0)),
            Declination = new(MountDirection.North, Angle.FromArcminutes(3.0)),
            Speeds = [new("1", 1.0), new("2", 5.0), new("3", 20.0), new("4", 60.0)],
            Keys = new("►", "◄", "▲", "▼"),
            KeyAddsToTracking = true,
        };

    private static readonly FramedPlan Framed = Requests.Framed(
        Requests.Of(Requests.Box(40.0, 20.0, 2.9, 4.3, 0.0), new Requests.Turn(0.0)) with
        {
            At = Evening,
        }
    );

    /// <summary>A single panel with hardly any margin.</summary>
    public static FramedPlan Plan(
        double ra,
        double dec,
        double angle = 20.0,
        bool mirrored = false
    ) => PlanAt(SkyDirection.FromDegrees(ra, dec), angle, mirrored);

    /// <summary>A single panel about a place: one framing, worked out once, with its panel set elsewhere.</summary>
    public static FramedPlan PlanAt(SkyDirection centre, double angle = 0.0, bool mirrored = false)
    {
        var pose = new CameraPose(centre, PositionAngle.FromDegrees(angle));
        return Framed with
        {
            Request = Framed.Request with
            {
                Rig = new Rig(250.0, new Sensor(4144, 2822, 4.63), mirrored: mirrored),
            },
            Pose = pose,
            Panels =
            [
                Framed.Panels[0] with
                {
                    Centre = centre,
                    PositionAngle = pose.PositionAngle,
                    Corners = Framed.Request.Rig.Field.Corners(pose, mirrored),
                },
            ],
        };
    }

    public static SeenFrame Frame(
        FramedPlan plan,
        SkyDirection centre,
        double angle,
        bool? mirrored = null
    ) =>
        new(
            new(centre, PositionAngle.FromDegrees(angle)),
            plan.Request.Rig.Field,
            mirrored ?? plan.Request.Rig.Mirrored,
            Evening
        );

    public static FrameCheck Check(
        FramedPlan plan,
        SeenFrame frame,
        MountHandling? handling = null
    ) =>
        FrameChecker.Check(
            new()
            {
                Plan = plan,
                Frame = frame,
                Handling = handling ?? Handling,
            }
        );
}
