namespace Framing.Drawing;

/// <summary>The marks of a picture in drawing order.</summary>
internal sealed class Sheet(PictureSize size, Colour ground)
{
    private readonly List<Mark> marks = [];

    public PictureSize Size { get; } = size;

    public Colour Ground { get; } = ground;

    public IReadOnlyList<Mark> Marks => marks;

    public void Add(Mark mark) => marks.Add(mark);

    public void Fill(Lines lines, Colour colour) => Add(new Mark.Shape(lines, colour, null));

    public void Draw(Lines lines, Stroke stroke)
    {
        if (!lines.IsEmpty)
        {
            Add(new Mark.Shape(lines, null, stroke));
        }
    }

    public void Group(string name, Box? clip, Action draw)
    {
        Add(new Mark.Begin(name, clip));
        draw();
        Add(new Mark.End());
    }

    /// <summary>Text that starts at the left end of its base line.</summary>
    public void Write(
        string text,
        PicturePoint start,
        double size,
        TextWeight weight,
        Colour ink,
        Stroke? border = null
    ) => Add(new Mark.Writing(text, start, size, weight, ink, border));
}
