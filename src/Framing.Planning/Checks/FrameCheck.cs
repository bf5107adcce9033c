using Framing.Sky;

namespace Framing.Planning;

/// <summary>A test frame held against its panel: what is wrong, and what to do about it.</summary>
public sealed record FrameCheck
{
    /// <summary>The frame.</summary>
    public required SeenFrame Frame { get; init; }

    /// <summary>The panel it is held against.</summary>
    public required PlannedPanel Panel { get; init; }

    /// <summary>What it is worth.</summary>
    public required CheckVerdict Verdict { get; init; }

    /// <summary>What to do, in the order that works; empty when it is within the tolerance.</summary>
    public required IReadOnlyList<CheckStep> Steps { get; init; }

    /// <summary>What it was judged by.</summary>
    public required CheckTolerance Tolerance { get; init; }

    /// <summary>
    /// Planned minus measured position angle, more than -90° to +90°: half a turn shows the same frame. Plus turns the body
    /// of the camera counter-clockwise as seen from behind it, looking along it at the sky; an odd number of mirrors ahead
    /// of the turning point has reversed the sign already.
    /// </summary>
    public required Angle TurnCamera { get; init; }

    /// <summary>How far the telescope must move east, a component on the sky at the frame's middle, against the north of date.</summary>
    public required Angle EastNeeded { get; init; }

    /// <summary>How far the telescope must move north, likewise.</summary>
    public required Angle NorthNeeded { get; init; }

    /// <summary>The distance on the sky between the frame's and the panel's middles.</summary>
    public required Angle TotalNeeded { get; init; }

    /// <summary>Panel minus frame in right ascension of date, -180° to +180°: what the axis must turn.</summary>
    public required Angle RightAscensionNeeded { get; init; }

    /// <summary>Panel minus frame in declination of date.</summary>
    public required Angle DeclinationNeeded { get; init; }

    /// <summary>The keys to hold, right ascension first; empty when nothing is to be moved.</summary>
    public required IReadOnlyList<KeyHold> Moves { get; init; }

    /// <summary>For each of <see cref="Moves"/>, how the stars in the displayed picture run while the key is held.</summary>
    public required IReadOnlyList<StarMotion> MotionOfMoves { get; init; }

    /// <summary>How the stars in the displayed picture must have moved in the end.</summary>
    public required StarMotion StarsMustMove { get; init; }

    /// <summary>What was taken to be typed last, in the frame that the hand control expects.</summary>
    public required SkyDirection Typed { get; init; }

    /// <summary>What to type instead, in the frame that the hand control expects: the panel corrected by the measured error.</summary>
    public required SkyDirection RetypePlace { get; init; }

    /// <summary>Right ascension to type, in the hand control's format.</summary>
    public required string RetypeRa { get; init; }

    /// <summary>Declination to type, in the hand control's format.</summary>
    public required string RetypeDec { get; init; }

    /// <summary>
    /// The offset of the mount that this frame teaches: where it pointed minus what was typed, in right ascension and
    /// declination of the hand control's frame. It holds for the next panels until the mount is set up anew.
    /// </summary>
    public required MountOffset LearnedOffset { get; init; }

    /// <summary>What the dial on the rings must read for the planned angle, 0 to 360°; null while the dial's zero is not known.</summary>
    public required Angle? Dial { get; init; }

    /// <summary>Part of the panel that the frame shows, 0 to 1.</summary>
    public required double CoveredFraction { get; init; }

    /// <summary>What the user should know: what, by how much, what to do.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
