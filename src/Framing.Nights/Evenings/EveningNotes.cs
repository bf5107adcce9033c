namespace Framing.Nights;

/// <summary>All that goes beside a framing for its evening.</summary>
/// <param name="Evening">The sums.</param>
/// <param name="Clock">The clock at the site; UTC without one.</param>
/// <param name="SwitchOn">What the hand control asks for; null without a site.</param>
/// <param name="Alignment">The stars for aligning; null without a site.</param>
public sealed record EveningNotes(
    Evening Evening,
    SiteClock Clock,
    SwitchOn? SwitchOn,
    AlignmentNotes? Alignment
);
