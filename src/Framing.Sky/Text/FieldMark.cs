namespace Framing.Sky;

/// <summary>What stands behind a number of a coordinate.</summary>
internal enum FieldMark
{
    /// <summary>Nothing: a space, a colon or the end.</summary>
    None = 0,

    /// <summary>h.</summary>
    Hours = 1,

    /// <summary>d, deg or °.</summary>
    Degrees = 2,

    /// <summary>m, of time or of arc.</summary>
    Minutes = 3,

    /// <summary>s, of time or of arc.</summary>
    Seconds = 4,

    /// <summary>′ or an apostrophe: of arc only.</summary>
    ArcMinutes = 5,

    /// <summary>″, a quotation mark or two apostrophes: of arc only.</summary>
    ArcSeconds = 6,
}
