using Framing.Sky;

namespace Framing.Planning;

/// <summary>Everything that a check of a test frame depends on.</summary>
public sealed record CheckRequest
{
    /// <summary>The framing.</summary>
    public required FramedPlan Plan { get; init; }

    /// <summary>The frame.</summary>
    public required SeenFrame Frame { get; init; }

    /// <summary>How the mount is moved by hand.</summary>
    public required MountHandling Handling { get; init; }

    /// <summary>The number of the panel; null for the one whose middle is nearest to the frame's.</summary>
    public int? PanelNumber { get; init; }

    /// <summary>What an earlier frame of this evening has taught of the mount, and what was typed was corrected by.</summary>
    public MountOffset CarriedOffset { get; init; }

    /// <summary>
    /// What was typed last, in the frame that the hand control expects; null for the panel corrected by
    /// <see cref="CarriedOffset"/>.
    /// </summary>
    public SkyDirection? Typed { get; init; }

    /// <summary>
    /// True when keys have moved the telescope since something was typed: where it points says nothing of the mount's offset
    /// then, and the carried one stays.
    /// </summary>
    public bool MovedByKeys { get; init; }

    /// <summary>The reading of the dial on the rings when up is north; null when not known.</summary>
    public Angle? DialZero { get; init; }
}
