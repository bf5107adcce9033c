using System.Globalization;

namespace Framing.Nights;

/// <summary>A moment at which the clock at a site is set.</summary>
/// <param name="Utc">The moment, UTC.</param>
/// <param name="Before">What the clock would have shown without the change.</param>
/// <param name="After">What it shows.</param>
public readonly record struct ClockChange(DateTime Utc, LocalMoment Before, LocalMoment After)
{
    /// <summary>By how much the clock goes forward; negative: back.</summary>
    public TimeSpan Forward => After.Offset - Before.Offset;

    /// <summary>The change in words, without a full stop: which times are left out, or come twice.</summary>
    public string Words =>
        Forward > TimeSpan.Zero
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"the clocks go forward from {Before.Local:HH:mm} to {After.Local:HH:mm}: the times between do not exist"
            )
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the clocks go back from {Before.Local:HH:mm} to {After.Local:HH:mm}: the times between come twice, first with {Before.OffsetText}, then with {After.OffsetText}"
            );
}
