using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>An object with an extent: drawn as its outline, with its name where there is room.</summary>
public sealed record ChartObject
{
    /// <summary>Makes an object.</summary>
    /// <param name="name">What is printed beside it; may be empty for none.</param>
    /// <param name="kind">What it is.</param>
    /// <param name="outline">Its outline on the sky; a catalogue ellipse is <see cref="SkyOutline.Ellipse"/>.</param>
    public ChartObject(string name, ChartObjectKind kind, SkyOutline outline)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(outline);
        Name = name;
        Kind = kind;
        Outline = outline;
    }

    /// <summary>What is printed beside it.</summary>
    public string Name { get; }

    /// <summary>What it is.</summary>
    public ChartObjectKind Kind { get; }

    /// <summary>Its outline on the sky.</summary>
    public SkyOutline Outline { get; }

    /// <summary>The distance of the farthest corner of the outline from its middle: larger objects are named first.</summary>
    public Angle Radius => Outline.Radius;
}
