namespace Framing.TestPlugins;

[Strategy("throws-when-made", "Throws in its constructor")]
public sealed class ThrowsWhenMade : IRotationStrategy
{
    public ThrowsWhenMade() => throw new InvalidOperationException("no\nring   found");

    public RotationAnswer Choose(RotationQuestion question) => RotationAnswer.Refuse("never");
}
