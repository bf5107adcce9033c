namespace Framing.Nights;

/// <summary>A stretch of time in which something holds.</summary>
/// <param name="Start">When it begins to hold, or the begin of the time that was looked at; UTC.</param>
/// <param name="End">When it ends to hold, or the end of the time that was looked at; UTC.</param>
/// <param name="HeldBefore">True when it held at the begin of the time looked at: <paramref name="Start"/> is no event.</param>
/// <param name="HoldsAfter">True when it holds at the end of the time looked at: <paramref name="End"/> is no event.</param>
public readonly record struct UtcInterval(
    DateTime Start,
    DateTime End,
    bool HeldBefore,
    bool HoldsAfter
)
{
    /// <summary>How long it holds.</summary>
    public TimeSpan Length => End - Start;
}
