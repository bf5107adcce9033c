using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Lays a frame over an outline on the sky.</summary>
/// <remarks>
/// <para>
/// For an angle the best place of a frame is the one where the outline stands in its middle both ways, measured in the
/// plane that touches the sky at the frame's own centre. Of all angles the best one is found exactly: see
/// <see cref="PlanarFit"/> for the plane and <c>SphereFit.cs</c> for the sky. Nothing is sampled.
/// </para>
/// <para>
/// Of equally good angles (to 1e-12 of the frame) the one nearest to the camera's present angle modulo 180° is taken, then
/// the one that is reached by turning from north towards east. Where the present angle is not known, north up stands for
/// it.
/// </para>
/// <para>
/// Where only one pair of sides is tight, a frame that is not centred along the other pair can gain a few 1e-5 of its size
/// on wide fields, because a plane stretches towards its rim. The middle is kept: it is what one wants to look at.
/// </para>
/// </remarks>
public static class OutlineFit
{
    /// <summary>The place and angle that leave the largest margin on the tighter pair of sides.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="field">The frame, both sides more than 0.</param>
    /// <param name="present">Position angle of the camera now, if known.</param>
    /// <returns>The frame; its margin is negative when it cannot hold the outline at any angle.</returns>
    /// <exception cref="ArgumentException">A side of the frame is not a positive number.</exception>
    public static FittedFrame LargestMargin(
        SkyOutline outline,
        FieldShape field,
        PositionAngle? present = null
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        return LargestMargin(new SphereFit(outline), field, present);
    }

    /// <summary>The place and angle at which the smallest frame of a shape holds the outline.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="field">The frame, both sides more than 0.</param>
    /// <param name="present">Position angle of the camera now, if known.</param>
    /// <returns>The frame; its scale says how large it has to be.</returns>
    /// <exception cref="ArgumentException">A side of the frame is not a positive number.</exception>
    public static FittedFrame SmallestScale(
        SkyOutline outline,
        FieldShape field,
        PositionAngle? present = null
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        PlanarFit.CheckSides(field.TangentWidth, field.TangentHeight);
        var goal = FitGoal.SmallestScale(field.TangentWidth, field.TangentHeight);
        var frame = new SphereFit(outline).Best(goal, present ?? PositionAngle.North);
        return Fitted(frame, field, Reported(frame.Axes.Up, present));
    }

    /// <summary>The best place at an angle.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="field">The frame, both sides more than 0.</param>
    /// <param name="angle">Position angle of the picture's up direction at the frame's centre.</param>
    /// <returns>The frame, at just this angle.</returns>
    /// <exception cref="ArgumentException">A side of the frame is not a positive number.</exception>
    public static FittedFrame AtAngle(SkyOutline outline, FieldShape field, PositionAngle angle)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return AllAtAngle(outline, field, angle).MaxBy(frame => frame.TangentMargin);
    }

    /// <summary>The narrowest strip that holds the outline.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="present">Position angle of the camera now, if known: of equally narrow strips the one that crosses the camera's up direction best.</param>
    /// <returns>The strip. Of a single point, the one that runs across the camera's up direction.</returns>
    /// <remarks>The minimum-width caliper: one side of the outline's hull lies along the narrowest strip.</remarks>
    public static OutlineAxis LongAxis(SkyOutline outline, PositionAngle? present = null)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var frame = new SphereFit(outline).Best(
            FitGoal.Narrowest(),
            present ?? PositionAngle.North
        );
        return new(
            frame.Axes.Centre,
            Reported(frame.Axes.Up.TurnedBy(Angle.FromDegrees(90.0)), present: null),
            frame.NeededWidth,
            frame.NeededHeight
        );
    }

    internal static FittedFrame LargestMargin(
        SphereFit fit,
        FieldShape field,
        PositionAngle? present
    )
    {
        PlanarFit.CheckSides(field.TangentWidth, field.TangentHeight);
        var goal = FitGoal.LargestMargin(field.TangentWidth, field.TangentHeight);
        var frame = fit.Best(goal, present ?? PositionAngle.North);
        return Fitted(frame, field, Reported(frame.Axes.Up, present));
    }

    /// <summary>Every place where a frame at an angle has the outline in its middle: one, but near a pole.</summary>
    internal static IEnumerable<FittedFrame> AllAtAngle(
        SkyOutline outline,
        FieldShape field,
        PositionAngle angle
    )
    {
        PlanarFit.CheckSides(field.TangentWidth, field.TangentHeight);
        var goal = FitGoal.LargestMargin(field.TangentWidth, field.TangentHeight);
        return new SphereFit(outline)
            .AtAngle(goal, angle)
            .Select(frame => Fitted(frame, field, angle));
    }

    /// <summary>Of an angle and its opposite the one to report.</summary>
    internal static PositionAngle Reported(PositionAngle up, PositionAngle? present)
    {
        if (present is { } now)
        {
            return Math.Abs(now.TurnTo(up).Radians) <= Math.PI / 2.0 ? up : up.Opposite;
        }

        // Rounding must not turn north up into 179.99999999999 degrees.
        const double Hair = 1e-11;
        var half = up.Degrees >= 180.0 ? up.Opposite : up;
        return half.Degrees is < Hair or > 180.0 - Hair ? PositionAngle.North : half;
    }

    private static FittedFrame Fitted(SphereFrame frame, FieldShape field, PositionAngle up) =>
        new(new(frame.Axes.Centre, up), field, frame.NeededWidth, frame.NeededHeight);
}
