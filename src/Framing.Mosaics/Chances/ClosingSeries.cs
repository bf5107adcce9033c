namespace Framing.Mosaics;

/// <summary>
/// How often mosaics close that differ in their overlap, each drawn with the very same errors: the answers can be compared
/// to the last trial.
/// </summary>
/// <remarks>
/// <para>
/// A trial that closes goes on closing when neighbours share more, and one that parts goes on parting when they share less.
/// Of mosaics with the same neighbours only the trials are drawn again that this leaves open: near the answer one in a
/// hundred. And where a short look is clearly on one side of the chance that matters, it is the answer.
/// </para>
/// <para>The same questions in the same order get the same answers, on however many threads.</para>
/// </remarks>
/// <param name="errors">How far from its plan a panel is likely to be shot.</param>
/// <param name="wanted">The chance that matters, 0 to 1: what is clearly above or below it need not be known better.</param>
public sealed class ClosingSeries(PanelErrors errors, double wanted)
{
    /// <summary>Trials of a first look.</summary>
    private const int FirstLook = 1_000;

    /// <summary>How many times as long the next look is.</summary>
    private const int LookLonger = 3;

    /// <summary>Standard errors of a look that make a clear difference.</summary>
    private const double Clear = 5.0;

    private readonly List<Answer> answers = [];

    /// <summary>The part of drawn mosaics that closes.</summary>
    /// <param name="mosaic">The mosaic as planned.</param>
    /// <param name="settings">How many trials at most, from which seed, and what all panels share.</param>
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

        var closes = Known(mosaic, settings);
        answers.Add(
            new(
                mosaic.Overlap,
                mosaic.Neighbours.Pairs,
                mosaic.Panels.Count,
                settings with
                {
                    MostThreads = 1,
                },
                closes
            )
        );

        // Look longer and longer, until it is clear on which side the chance lies.
        for (var trials = FirstLook; ; trials *= LookLonger)
        {
            if (trials >= settings.Trials)
            {
                return Chance(settings.Trials);
            }

            var chance = Chance(trials);
            var spread = Math.Sqrt(
                Math.Max(chance * (1.0 - chance), wanted * (1.0 - wanted)) / trials
            );
            if (Math.Abs(chance - wanted) > Clear * spread)
            {
                return chance;
            }
        }

        double Chance(int trials)
        {
            ClosingTrials.Decide(mosaic, errors, settings, closes.AsMemory(0, trials));
            return closes.Take(trials).Count(trial => trial == true) / (double)trials;
        }
    }

    /// <summary>What earlier answers say of each trial; null where they say nothing.</summary>
    private bool?[] Known(Mosaic mosaic, TrialSettings settings)
    {
        var closes = new bool?[settings.Trials];
        foreach (var earlier in answers.Where(answer => answer.IsLike(mosaic, settings)))
        {
            var more = IsWithin(earlier.Overlap, mosaic.Overlap);
            var less = IsWithin(mosaic.Overlap, earlier.Overlap);
            for (var trial = 0; trial < closes.Length; trial++)
            {
                if (earlier.Closes[trial] is { } closed && (closed ? more : less))
                {
                    closes[trial] = closed;
                }
            }
        }

        return closes;
    }

    private static bool IsWithin(PanelOverlap less, PanelOverlap more) =>
        less.AlongWidth <= more.AlongWidth && less.AlongHeight <= more.AlongHeight;

    private sealed record Answer(
        PanelOverlap Overlap,
        IReadOnlyList<PanelPair> Pairs,
        int Panels,
        TrialSettings Settings,
        bool?[] Closes
    )
    {
        public bool IsLike(Mosaic mosaic, TrialSettings settings) =>
            Settings == (settings with { MostThreads = 1 })
            && Panels == mosaic.Panels.Count
            && Pairs.SequenceEqual(mosaic.Neighbours.Pairs);
    }
}
