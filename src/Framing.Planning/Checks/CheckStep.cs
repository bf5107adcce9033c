namespace Framing.Planning;

/// <summary>One thing to do at the mount, in the order that works.</summary>
public enum CheckStep
{
    /// <summary>Turn the camera in its rings.</summary>
    Turn = 0,

    /// <summary>Take a new test frame: turning shifts pointing and focus.</summary>
    NewFrame = 1,

    /// <summary>Hold keys.</summary>
    Move = 2,

    /// <summary>Type corrected coordinates.</summary>
    Retype = 3,
}
