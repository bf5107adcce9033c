namespace Framing.Sky;

/// <summary>One number of a coordinate's text.</summary>
/// <param name="Text">The number with its sign and mark, as a message names it.</param>
/// <param name="Value">The number without its sign.</param>
/// <param name="Sign">'+', '-', or '\0' where none is written.</param>
/// <param name="Mark">What stands behind it.</param>
/// <param name="HasDecimals">True when it is written with a decimal point or comma.</param>
/// <param name="IsJoined">True when a colon ties it to the number before it.</param>
/// <param name="Start">Where it starts in the text, sign included.</param>
/// <param name="End">Where it ends, mark included.</param>
internal readonly record struct CoordinateField(
    string Text,
    double Value,
    char Sign,
    FieldMark Mark,
    bool HasDecimals,
    bool IsJoined,
    int Start,
    int End
);
