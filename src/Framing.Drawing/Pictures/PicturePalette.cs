namespace Framing.Drawing;

/// <summary>The set of colours of a picture.</summary>
public enum PicturePalette
{
    /// <summary>A deep blue sky on light paper, for planning at a desk and for printing.</summary>
    Day,

    /// <summary>Red on black and nothing else, for eyes that are used to the dark.</summary>
    Night,
}
