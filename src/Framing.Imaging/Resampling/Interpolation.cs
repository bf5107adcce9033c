namespace Framing.Imaging;

/// <summary>How a picture's samples become the value at a place between them.</summary>
public enum Interpolation
{
    /// <summary>The nearest sample: values stay those of the file. Coarser charts pick samples, nothing is averaged.</summary>
    Nearest,

    /// <summary>Linear between the four samples around: no value beyond theirs.</summary>
    Bilinear,

    /// <summary>
    /// The windowed sinc of 6 by 6 samples: keeps stars sharp, and may over- and undershoot beside them by a tenth of a step.
    /// </summary>
    Lanczos3,
}
