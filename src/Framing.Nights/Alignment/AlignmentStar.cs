using Framing.Sky;

namespace Framing.Nights;

/// <summary>A star that stands well for aligning a mount.</summary>
/// <param name="Star">The star.</param>
/// <param name="OfDate">Its direction against the true equator and equinox of date.</param>
/// <param name="Place">Where it stands.</param>
public sealed record AlignmentStar(BrightStar Star, SkyDirection OfDate, HorizontalPlace Place);
