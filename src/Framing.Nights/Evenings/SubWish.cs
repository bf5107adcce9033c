namespace Framing.Nights;

/// <summary>The subs that are wished for through one filter.</summary>
/// <param name="Filter">The filter's name.</param>
/// <param name="Sub">Exposure of one sub, more than 0.</param>
/// <param name="Readout">From the end of a sub to the start of the next.</param>
/// <param name="DitherEvery">Subs between two dithers; 0 when there is no dithering.</param>
/// <param name="Dither">Time that a dither takes with settling.</param>
/// <param name="Share">Share of the goal against the other filters' shares, more than 0.</param>
public sealed record SubWish(
    string Filter,
    TimeSpan Sub,
    TimeSpan Readout,
    int DitherEvery,
    TimeSpan Dither,
    double Share
)
{
    /// <summary>The clock's time that a sub takes, its part of the dithers in it.</summary>
    public TimeSpan Cadence =>
        Sub + Readout + (DitherEvery > 0 ? Dither / DitherEvery : TimeSpan.Zero);
}
