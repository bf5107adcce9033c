using Framing.Sky;

namespace Framing.Planning;

/// <summary>How far a frame may be off its panel without harm.</summary>
/// <param name="Place">How far its middle may be off.</param>
/// <param name="Turn">How far its camera angle may be off.</param>
public sealed record CheckTolerance(Angle Place, Angle Turn)
{
    /// <summary>Closer than this nobody needs to be, and small mounts do not stay.</summary>
    private static readonly Angle LeastPlace = Angle.FromArcminutes(0.5);

    /// <summary>Closer than this a camera is hardly ever set in its rings by hand (common practice).</summary>
    private static readonly Angle LeastTurn = Angle.FromDegrees(0.3);

    private static readonly Angle MostTurn = Angle.FromDegrees(2.0);

    /// <summary>What the overlap with the neighbours, and the margin about the target, leave for one panel.</summary>
    /// <param name="plan">The framing, with panels.</param>
    /// <returns>The tolerance.</returns>
    /// <remarks>
    /// Of the narrowest strip that two neighbours share one half is this panel's, the other the neighbour's; a single panel
    /// has its margin. Half of that is kept for the place, half for the turn: an edge of length L that is turned by θ eats
    /// L/2 · θ at its end.
    /// </remarks>
    public static CheckTolerance Of(FramedPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var field = plan.Request.Rig.Field;
        var room = Angle.FromRadians(Math.Max(0.0, Math.Atan(plan.TangentMargin)));
        if (plan.Panels.Count > 1 && plan.Coverage?.LeastOverlap is { } shared)
        {
            room = Angle.Max(Angle.Zero, shared / 2.0);
        }

        var half = room / 2.0;
        var arm = Angle.Max(field.Width, field.Height).Radians / 2.0;
        return new(
            Angle.Max(LeastPlace, half),
            Angle.Max(LeastTurn, Angle.Min(MostTurn, Angle.FromRadians(half.Radians / arm)))
        );
    }
}
