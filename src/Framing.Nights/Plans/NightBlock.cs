using Framing.Sky;

namespace Framing.Nights;

/// <summary>Subs of one panel through one filter, shot in one go.</summary>
/// <param name="Panel">The panel's number, from 1.</param>
/// <param name="Filter">The filter.</param>
/// <param name="From">Begin of the first exposure, a whole minute, UTC.</param>
/// <param name="To">End of the last exposure, UTC.</param>
/// <param name="SubsToShoot">How many subs.</param>
/// <param name="SubsExpectedGood">How many of them are expected to be good.</param>
/// <param name="Lowest">The lowest altitude of the panel's middle in that time, refracted.</param>
/// <param name="Highest">The highest.</param>
/// <param name="MeanAirmass">The mean of the airmasses in the middle of each sub.</param>
public sealed record NightBlock(
    int Panel,
    NightFilter Filter,
    DateTime From,
    DateTime To,
    int SubsToShoot,
    int SubsExpectedGood,
    Angle Lowest,
    Angle Highest,
    double MeanAirmass
)
{
    /// <summary>The middle of the block.</summary>
    public DateTime Middle => From + ((To - From) / 2.0);
}
