namespace Framing.Drawing;

/// <summary>One thing drawn on the sheet. A picture is a list of marks; every output draws the same list.</summary>
internal abstract record Mark
{
    private Mark() { }

    /// <summary>The start of a named group, clipped to a box when one is given.</summary>
    public sealed record Begin(string Name, Box? Clip) : Mark;

    /// <summary>The end of the last group that was begun.</summary>
    public sealed record End : Mark;

    /// <summary>Lines that are filled, drawn, or both.</summary>
    public sealed record Shape(Lines Lines, Colour? Fill, Stroke? Stroke) : Mark;

    /// <summary>Round dots of one colour.</summary>
    public sealed record Dots(IReadOnlyList<Dot> Places, Colour Fill) : Mark;

    /// <summary>Open rings of one colour.</summary>
    public sealed record Rings(IReadOnlyList<Dot> Places, Stroke Stroke) : Mark;

    /// <summary>Text, with a border in the colour of the ground where lines may pass under it.</summary>
    public sealed record Writing(
        string Text,
        PicturePoint Start,
        double Size,
        TextWeight Weight,
        Colour Ink,
        Stroke? Border
    ) : Mark;

    /// <summary>A picture of the size of its box, four bytes a pixel (red, green, blue, opacity), within some polygons or everywhere.</summary>
    public sealed record Image(Box Place, byte[] Pixels, Lines? Within) : Mark;
}
