namespace Framing.Mosaics;

/// <summary>
/// How often mosaics close that differ in their overlap, each drawn with the very same errors: the answers can be compared
/// to the last trial.
/// </summary>
/// <remarks>
/// <para>
/// A trial that closes goes on closing when neighbours share more, and one that parts goes on parting when they share less.
/// Of mosaics with the same neighbours only the trials are drawn again that this leaves open: near the answer one in a
/// hundred. And where a first look is far from the chance that matters, it is the answer.
/// </para>
/// <para>The same questions in the same order get the same answers, on however many threads.</para>
/// </remarks>
/// <param name="errors">How far from its plan a panel is likely to be shot.</param>
/// <param name="wanted">The chance that matters, 0 to 1: what is clearly above or below it need not be known better.</param>
public sealed class ClosingSeries(PanelErrors errors, double wanted)
{
    /// <summary>Trials of a first look.</summary>
    private const int FirstLook = 4_000;

    /// <summary>Standard errors of the first look that make a clear difference.</summary>
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
        var first = Chance(Math.Min(FirstLook, settings.Trials));
        var spread = Math.Sqrt(
            Math.Max(first * (1.0 - first), wanted * (1.0 - wanted)) / FirstLook
        );
        return Math.Abs(first - wanted) > Clear * spread ? first : Chance(settings.Trials);

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
