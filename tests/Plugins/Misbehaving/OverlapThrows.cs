namespace Framing.TestPlugins;

[Strategy("overlap-throws", "Throws when it is asked")]
public sealed class OverlapThrows : IOverlapStrategy
{
    public OverlapAnswer Choose(OverlapQuestion question) =>
        throw new DivideByZeroException("divided by nothing");
}
