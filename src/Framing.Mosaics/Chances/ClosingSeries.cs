namespace Framing.Mosaics;

/// <summary>
/// How often mosaics close that differ in their overlap, each drawn with the very same errors: the answers can be compared
/// to the last trial.
/// </summary>
/// <remarks>
/// <para>
/// A trial that closes goes on closing when neighbours share more, and one that parts goes on parting when they share less.
/// Of mosaics with the same neighbours only the trials are drawn again that are still open: near the answer that is one in
/// a hundred.
/// </para>
/// <para>The same questions in the same order get the same answers, on however many threads.</para>
/// </remarks>
/// <param name="errors">How far from its plan a panel is likely to be shot.</param>
public sealed class ClosingSeries(PanelErrors errors)
{
    private readonly List<Answer> answers = [];

    /// <summary>The part of drawn mosaics that closes.</summary>
    /// <param name="mosaic">The mosaic as planned.</param>
    /// <param name="settings">How many trials, from which seed, and what all panels share.</param>
    /// <returns>0 to 1; 1 where there are no neighbours.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An error is negative or there is no trial.</exception>
    public double ChanceNoGap(Mosaic mosaic, TrialSettings settings)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.Trials, 1, nameof(settings));
        if (mosaic.Neighbours.Pairs.Count == 0)
        {
            return 1.0;
        }

        var closes = new bool?[settings.Trials];
        foreach (var known in answers.Where(known => known.IsLike(mosaic, settings)))
        {
            var (more, less) = (
                IsWithin(known.Overlap, mosaic.Overlap),
                IsWithin(mosaic.Overlap, known.Overlap)
            );
            for (var trial = 0; trial < closes.Length; trial++)
            {
                if (known.Closes[trial] ? more : less)
                {
                    closes[trial] = known.Closes[trial];
                }
            }
        }

        ClosingTrials.Decide(mosaic, errors, settings, closes);
        bool[] decided = [.. closes.Select(trial => trial!.Value)];
        answers.Add(
            new(mosaic.Overlap, mosaic.Neighbours.Pairs, mosaic.Panels.Count, settings, decided)
        );
        return decided.Count(trial => trial) / (double)decided.Length;
    }

    private static bool IsWithin(PanelOverlap less, PanelOverlap more) =>
        less.AlongWidth <= more.AlongWidth && less.AlongHeight <= more.AlongHeight;

    private sealed record Answer(
        PanelOverlap Overlap,
        IReadOnlyList<PanelPair> Pairs,
        int Panels,
        TrialSettings Settings,
        bool[] Closes
    )
    {
        public bool IsLike(Mosaic mosaic, TrialSettings settings) =>
            Settings == settings
            && Panels == mosaic.Panels.Count
            && Pairs.SequenceEqual(mosaic.Neighbours.Pairs);
    }
}
