using Framing.Sky;
using Framing.Solving;

namespace Framing.Workshop;

/// <summary>Which frame is to be solved, and what is known of it.</summary>
public sealed record SolveOrder
{
    /// <summary>The frame.</summary>
    public required string Path { get; init; }

    /// <summary>Where it is expected to point, within two field widths; null where nobody knows.</summary>
    public SkyDirection? Near { get; init; }

    /// <summary>The sky per pixel that is expected, within 3 %; null where nobody knows.</summary>
    public Angle? Scale { get; init; }

    /// <summary>The stars to match with; see <see cref="StarTableFile"/>.</summary>
    public ReferenceStars? Stars { get; init; }

    /// <summary>When the frame was taken if its file does not say.</summary>
    public required DateTimeOffset Now { get; init; }
}
