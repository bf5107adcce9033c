namespace Framing.TestPlugins;

[Strategy("needs-it-to-exist", "Is built upon a class of a library that is not there")]
public sealed class NeedsItToExist : Lost, IRotationStrategy
{
    public override RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.North, "north");
}
