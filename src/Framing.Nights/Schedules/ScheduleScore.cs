namespace Framing.Nights;

/// <summary>How good a plan of the nights is; the first of these that differs decides.</summary>
/// <param name="LeastFraction">The smallest share of its wanted subs that any panel gets through any filter: more is better.</param>
/// <param name="Subs">All subs: more is better.</param>
/// <param name="Changes">Changes of panel within nights: fewer is better.</param>
/// <param name="Airmass">The sum of the airmasses of all subs: less is better.</param>
internal readonly record struct ScheduleScore(
    double LeastFraction,
    int Subs,
    int Changes,
    double Airmass
)
{
    // Sums of airmasses in another order differ by rounding.
    private const double Rounding = 1e-7;

    public bool IsBetterThan(ScheduleScore other)
    {
        if (LeastFraction != other.LeastFraction)
        {
            return LeastFraction > other.LeastFraction;
        }

        if (Subs != other.Subs)
        {
            return Subs > other.Subs;
        }

        return Changes != other.Changes
            ? Changes < other.Changes
            : Airmass < other.Airmass - Rounding;
    }
}
