namespace Framing.Rehearsal;

/// <summary>What kind of frame a camera takes.</summary>
public enum FrameKind
{
    /// <summary>Of the sky.</summary>
    Light = 0,

    /// <summary>Of an even surface: vignetting and dust only.</summary>
    Flat,

    /// <summary>As long as a light, with a cap on.</summary>
    Dark,

    /// <summary>As short as can be, with a cap on.</summary>
    Bias,
}
