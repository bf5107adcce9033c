namespace Framing.Drawing;

/// <summary>What a label of a picture is for, the most important first.</summary>
public enum LabelKind
{
    /// <summary>The letter of the north or east arrow.</summary>
    Direction,

    /// <summary>The length of the scale bar.</summary>
    Scale,

    /// <summary>The number of a panel.</summary>
    Panel,

    /// <summary>The name of the target.</summary>
    Target,

    /// <summary>The name of another object.</summary>
    Object,

    /// <summary>The name of a star.</summary>
    Star,

    /// <summary>A right ascension or declination at the edge of the chart.</summary>
    Coordinate,

    /// <summary>The title or the summary.</summary>
    Heading,

    /// <summary>A line of the legend.</summary>
    Legend,
}
