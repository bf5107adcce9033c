namespace Framing.TestPlugins;

[Strategy("needs-nothing", "Works, beside two that cannot")]
public sealed class NeedsNothing : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.FromDegrees(33.0), "33 degrees");
}
