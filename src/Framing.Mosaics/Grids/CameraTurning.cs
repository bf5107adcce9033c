namespace Framing.Mosaics;

/// <summary>What happens to the camera between the panels of a mosaic.</summary>
public enum CameraTurning
{
    /// <summary>
    /// The camera is left alone: on an equatorial mount it keeps its angle to the mount's pole, and panels at other right
    /// ascensions stand turned against each other.
    /// </summary>
    LeftAlone,

    /// <summary>The camera is turned at each panel so that the panels lie along one grid.</summary>
    TurnedAtEachPanel,
}
