namespace Framing.Plugins;

/// <summary>A frame turned by 180° covers the same sky.</summary>
internal static class Opposites
{
    /// <summary>Of an angle and its opposite the one nearer to the present one, else the one below 180°.</summary>
    public static PositionAngle Nearer(PositionAngle angle, PositionAngle? present) =>
        present is { } now ? Math.Abs(now.TurnTo(angle).Degrees) > 90.0 ? angle.Opposite : angle
        : angle.Degrees >= 180.0 ? angle.Opposite
        : angle;
}
