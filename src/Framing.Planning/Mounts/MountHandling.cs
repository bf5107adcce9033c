namespace Framing.Planning;

/// <summary>How a mount is moved by hand: its keys, their speeds, and how the axes obey.</summary>
public sealed record MountHandling
{
    /// <summary>The axis that the keys east and west move.</summary>
    public required AxisHandling RightAscension { get; init; }

    /// <summary>The axis that the keys north and south move.</summary>
    public required AxisHandling Declination { get; init; }

    /// <summary>The speeds of the hand control, slowest first, one or more.</summary>
    public required IReadOnlyList<MountSpeed> Speeds { get; init; }

    /// <summary>What is printed on the keys.</summary>
    public required MountKeys Keys { get; init; }

    /// <summary>True when a pressed key adds to the drive's motion; false when it replaces it.</summary>
    public required bool KeyAddsToTracking { get; init; }

    /// <summary>The axis that moves the telescope in a direction.</summary>
    /// <param name="towards">The direction.</param>
    /// <returns>How that axis obeys.</returns>
    public AxisHandling AxisTowards(MountDirection towards) =>
        towards is MountDirection.East or MountDirection.West ? RightAscension : Declination;

    /// <summary>What is printed on the key towards a direction.</summary>
    /// <param name="towards">Where the telescope is to point.</param>
    /// <returns>The key's label.</returns>
    public string KeyTowards(MountDirection towards) =>
        towards switch
        {
            MountDirection.East => Keys.East,
            MountDirection.West => Keys.West,
            MountDirection.North => Keys.North,
            _ => Keys.South,
        };
}
