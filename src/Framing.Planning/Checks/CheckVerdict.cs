namespace Framing.Planning;

/// <summary>What a test frame is worth.</summary>
public enum CheckVerdict
{
    /// <summary>Place and camera angle are within what the overlap leaves: start.</summary>
    Within = 0,

    /// <summary>It shows a part of the panel, and must be moved or turned.</summary>
    NotYet = 1,

    /// <summary>It shows nothing of the panel.</summary>
    WrongField = 2,
}
