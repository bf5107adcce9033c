namespace Framing.Drawing;

/// <summary>A text in the chart that has found its room.</summary>
internal sealed record Name(string Text, Box Room, double Size, TextWeight Weight, Colour Ink);
