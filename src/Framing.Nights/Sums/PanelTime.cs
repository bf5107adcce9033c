namespace Framing.Nights;

/// <summary>What one panel costs of a night.</summary>
/// <param name="Setup">The human's time before the first sub.</param>
/// <param name="Sub">Exposure of a sub.</param>
/// <param name="Readout">From the end of a sub to the start of the next.</param>
/// <param name="DitherEvery">Subs between two dithers; 0 for none.</param>
/// <param name="Dither">What a dither takes.</param>
/// <param name="FocusEvery">Time between two looks at the focus; zero for none.</param>
/// <param name="Focus">What a look at the focus takes.</param>
public sealed record PanelTime(
    TimeSpan Setup,
    TimeSpan Sub,
    TimeSpan Readout,
    int DitherEvery,
    TimeSpan Dither,
    TimeSpan FocusEvery,
    TimeSpan Focus
)
{
    /// <summary>The time for a number of subs: no dither after the last one, looks at the focus by the time that ran without them.</summary>
    /// <param name="subs">The subs, 1 or more.</param>
    /// <returns>The time with everything in it.</returns>
    public TimeSpan For(int subs)
    {
        var time = Setup + (subs * (Sub + Readout));
        if (DitherEvery > 0)
        {
            time += (subs - 1) / DitherEvery * Dither;
        }

        return FocusEvery > TimeSpan.Zero ? time + (Math.Floor(time / FocusEvery) * Focus) : time;
    }
}
