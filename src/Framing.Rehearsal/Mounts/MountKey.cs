namespace Framing.Rehearsal;

/// <summary>A key of the hand control, by where the telescope points further when it is held.</summary>
public enum MountKey
{
    /// <summary>Towards growing right ascension.</summary>
    East = 0,

    /// <summary>Towards falling right ascension.</summary>
    West = 1,

    /// <summary>Towards the north celestial pole.</summary>
    North = 2,

    /// <summary>Towards the south celestial pole.</summary>
    South = 3,
}
