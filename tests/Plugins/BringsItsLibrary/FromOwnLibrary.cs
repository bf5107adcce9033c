namespace Framing.TestPlugins;

[Strategy("from-own-library", "Asks a library that it brings")]
public sealed class FromOwnLibrary : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(PositionAngle.FromDegrees(Own.Degrees), "from its own library");
}
