namespace Framing.TestPlugins;

/// <summary>Names are told apart by what they answer: this one is sound beside "north-up" for rotation.</summary>
[Strategy("north-up", "An overlap strategy may have the name of a rotation strategy")]
public sealed class OverlapNorthUp : IOverlapStrategy
{
    public OverlapAnswer Choose(OverlapQuestion question) =>
        OverlapAnswer.Share(new(0.0, 0.0), "none");
}
