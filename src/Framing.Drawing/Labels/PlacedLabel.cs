namespace Framing.Drawing;

/// <summary>A text that was placed in a picture, with the room it takes. No two of a picture meet.</summary>
/// <param name="Text">The text.</param>
/// <param name="Kind">What the text is for.</param>
/// <param name="Left">The left end of its room, in pixels from the picture's left edge.</param>
/// <param name="Top">The upper end of its room, in pixels from the picture's upper edge.</param>
/// <param name="Right">The right end of its room.</param>
/// <param name="Bottom">The lower end of its room.</param>
public sealed record PlacedLabel(
    string Text,
    LabelKind Kind,
    double Left,
    double Top,
    double Right,
    double Bottom
);
