namespace Framing.TestPlugins;

/// <summary>Throws an exception of its own, so that the host meets a type it has never seen.</summary>
[Strategy("throws-when-asked", "Throws when it is asked")]
public sealed class ThrowsWhenAsked : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question) => throw new RingStuckException();

    private sealed class RingStuckException() : Exception("the ring is stuck");
}
