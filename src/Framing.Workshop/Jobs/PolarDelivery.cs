using Framing.Nights;

namespace Framing.Workshop;

/// <summary>What became of a search for the polar axis.</summary>
/// <param name="Result">Where the axis points, or why that cannot be told.</param>
/// <param name="Site">Where the mount stands.</param>
/// <param name="Messages">What the user should know.</param>
public sealed record PolarDelivery(
    AxisResult Result,
    ObservingSite Site,
    IReadOnlyList<string> Messages
);
