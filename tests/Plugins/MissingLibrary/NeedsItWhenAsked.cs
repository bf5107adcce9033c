namespace Framing.TestPlugins;

[Strategy("needs-it-when-asked", "Uses a library that is not there, when it is asked")]
public sealed class NeedsItWhenAsked : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.FromDegrees(Lost.Degrees), "from the lost library");
}
