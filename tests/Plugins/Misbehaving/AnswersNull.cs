namespace Framing.TestPlugins;

[Strategy("answers-null", "Gives no answer at all")]
public sealed class AnswersNull : IRotationStrategy, IOverlapStrategy
{
    public RotationAnswer Choose(RotationQuestion question) => null!;

    public OverlapAnswer Choose(OverlapQuestion question) => null!;
}
