namespace Framing.TestPlugins;

[Strategy("north-up", "Another strategy of the same name, 5 degrees off")]
public sealed class AnotherNorthUp : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.FromDegrees(5.0), "5 degrees");
}
