namespace Framing.Planning;

/// <summary>Towards where the telescope points when it moves (not where the stars go).</summary>
public enum MountDirection
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
