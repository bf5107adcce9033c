using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>Everything that a framing depends on.</summary>
public sealed record FramingRequest
{
    /// <summary>The plan's title.</summary>
    public required string Title { get; init; }

    /// <summary>The lens or telescope with its camera.</summary>
    public required Rig Rig { get; init; }

    /// <summary>What to frame.</summary>
    public required Target Target { get; init; }

    /// <summary>The margin wanted on all sides, beside what dithering needs.</summary>
    public Angle Margin { get; init; }

    /// <summary>The margin wanted on all sides, dithering included, as a tangent.</summary>
    public double WantedTangentMargin => Math.Tan((Margin + Errors.Dither).Radians);

    /// <summary>How the camera angle is chosen.</summary>
    public required ChosenRotation Rotation { get; init; }

    /// <summary>How the overlap is chosen.</summary>
    public required ChosenOverlap Overlap { get; init; }

    /// <summary>Where the camera stands now, if known.</summary>
    public PositionAngle? PresentCameraAngle { get; init; }

    /// <summary>The middle of the mosaic where the user has fixed it; null to find the best one for the target.</summary>
    public SkyDirection? FixedCentre { get; init; }

    /// <summary>How many panels the plan asks for; with a fixed centre, never an adapted grid.</summary>
    public GridWish Grid { get; init; }

    /// <summary>The most panels that the plan allows.</summary>
    public int MostPanels { get; init; } = 100;

    /// <summary>True when the camera is turned again at each panel; false when it keeps its angle to the mount's north.</summary>
    public bool TurnCameraAtEachPanel { get; init; }

    /// <summary>The chance, 0 to 1, wanted for a mosaic without a gap.</summary>
    public double ChanceNoGap { get; init; } = 0.99;

    /// <summary>How far from its plan a panel is likely to be shot; its dithering is added to the margin.</summary>
    public PanelErrors Errors { get; init; }

    /// <summary>
    /// The part of the variance of pointing and camera angle, 0 to 1, that all panels of the mosaic have in common: it opens
    /// no gap, but it moves the whole mosaic off its target.
    /// </summary>
    public double SharedErrorPart { get; init; }

    /// <summary>The time, UTC, for which coordinates of date are given.</summary>
    public required DateTime At { get; init; }

    /// <summary>The date on which the evening begins at the site; null when only <see cref="At"/> is known.</summary>
    public DateOnly? Evening { get; init; }

    /// <summary>Declination, north or south, beyond which the camera meets the mount's arm or base; 90° where it never does.</summary>
    public Angle DeclinationLimit { get; init; } = Angle.FromDegrees(90.0);

    /// <summary>How the mount is moved by hand; null where the plan does not say: from west and north, without backlash.</summary>
    public MountHandling? Handling { get; init; }

    /// <summary>The frame that the hand control expects.</summary>
    public GotoFrame GotoFrame { get; init; }

    /// <summary>The form of numbers that the hand control expects.</summary>
    public EntryFormat EntryFormat { get; init; }

    /// <summary>Counts stars for strategies that ask.</summary>
    public required IStarCount Stars { get; init; }
}
