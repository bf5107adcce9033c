namespace Framing.Plugins;

/// <summary>North at the top of the picture.</summary>
[Strategy("north-up", "North at the top of the picture")]
public sealed class NorthUp : IRotationStrategy
{
    /// <summary>Answers 0°.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle.</returns>
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.North, "north at the top");
}
