namespace Framing.Planning;

/// <summary>What a frame was taken for.</summary>
public enum ShotKind
{
    /// <summary>The sky.</summary>
    Light = 0,

    /// <summary>An even light, for dust and shading.</summary>
    Flat = 1,

    /// <summary>No light, as long as a sub.</summary>
    Dark = 2,

    /// <summary>No light, as short as can be.</summary>
    Bias = 3,
}
