namespace Framing.Plugins;

/// <summary>East at the top of the picture.</summary>
[Strategy("east-up", "East at the top of the picture")]
public sealed class EastUp : IRotationStrategy
{
    /// <summary>Answers 90°.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle.</returns>
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.East, "east at the top");
}
