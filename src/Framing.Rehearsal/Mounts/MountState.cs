using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>How a rehearsed mount stands at a moment: what an evening hands on from frame to frame.</summary>
public sealed record MountState
{
    /// <summary>The moment, UTC.</summary>
    public required DateTime Time { get; init; }

    /// <summary>
    /// Right ascension about the mount's own axis, against its own equator: it rests while the drive keeps up with the sky.
    /// </summary>
    public Angle RightAscension { get; init; }

    /// <summary>Declination against the mount's own equator.</summary>
    public Angle Declination { get; init; }

    /// <summary>How far the motor in right ascension has moved east through the play of its gear, 0 up to the backlash.</summary>
    public Angle RightAscensionPlay { get; init; }

    /// <summary>How far the motor in declination has moved north through the play of its gear.</summary>
    public Angle DeclinationPlay { get; init; }

    /// <summary>How far the camera was turned since the evening's start: position angle, growing from north to east.</summary>
    public Angle Turned { get; init; }

    /// <summary>How far the axis was raised since then.</summary>
    public Angle Raised { get; init; }

    /// <summary>How far the axis was swung about the vertical since then, clockwise as seen from above.</summary>
    public Angle Swung { get; init; }

    /// <summary>How often something was moved: each has its own chance.</summary>
    public int Moves { get; init; }
}
