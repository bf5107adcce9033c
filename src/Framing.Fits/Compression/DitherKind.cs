namespace Framing.Fits;

/// <summary>How whole numbers of a tile become real ones again.</summary>
internal enum DitherKind
{
    /// <summary>Scaled, nothing more (NO_DITHER).</summary>
    None,

    /// <summary>The noise that was added before rounding is taken away (SUBTRACTIVE_DITHER_1).</summary>
    Subtractive,

    /// <summary>The same, and exact zeros are set apart (SUBTRACTIVE_DITHER_2).</summary>
    SubtractiveWithZeros,
}
