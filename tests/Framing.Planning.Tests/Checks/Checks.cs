using Framing.Mosaics;
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

    /// <summary>A single panel about a place, with hardly any margin.</summary>
    public static FramedPlan Plan(double ra, double dec, double angle = 20.0, bool mirrored = false)
    {
        var rig = new Rig(250.0, new Sensor(4144, 2822, 4.63), mirrored: mirrored);
        return Requests.Framed(
            Requests.Of(Requests.Box(ra, dec, 2.9, 4.3, angle), new Requests.Turn(angle)) with
            {
                Rig = rig,
                At = Evening,
            }
        );
    }

    /// <summary>A single panel whose middle is fixed to a place.</summary>
    public static FramedPlan PlanAt(SkyDirection centre, double angle = 0.0)
    {
        var outline = SkyOutline.Rectangle(
            centre,
            Angle.FromDegrees(2.9),
            Angle.FromDegrees(2.9),
            PositionAngle.FromDegrees(angle)
        );
        return Requests.Framed(
            Requests.Of(outline, new Requests.Turn(angle)) with
            {
                At = Evening,
                FixedCentre = centre,
            }
        );
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
