namespace Framing.Drawing;

/// <summary>The colours of a picture, by what they are for.</summary>
/// <remarks>
/// Overlays of the day palette are colours of Okabe and Ito's set for colour-blind readers ("Color Universal Design",
/// jfly.uni-koeln.de/color, 2008; values from memory), or those mixed with the sky. The night palette is red alone: no
/// green, no blue.
/// </remarks>
internal sealed record Palette
{
    private static readonly Colour Orange = Colour.Hex(0xE69F00);
    private static readonly Colour SkyBlue = Colour.Hex(0x56B4E9);
    private static readonly Colour Vermillion = Colour.Hex(0xD55E00);
    private static readonly Colour Yellow = Colour.Hex(0xF0E442);
    private static readonly Colour ReddishPurple = Colour.Hex(0xCC79A7);

    public static Palette Day { get; } =
        new()
        {
            Page = Colour.Hex(0xF8F6F1),
            PageInk = Colour.Hex(0x16233B),
            PageSoft = Colour.Hex(0x55617A),
            PageLine = Colour.Hex(0xD5D1C6),
            ChartInside = Colour.Hex(0x12233F),
            ChartOutside = Colour.Hex(0x0B1628),
            Rim = Colour.Hex(0x16233B),
            Grid = Colour.Hex(0x8FA6CC).At(0.26),
            Panel = Orange,
            Frame = Yellow,
            Target = SkyBlue,
            FallsShort = Vermillion,
            Outside = Orange,
            Object = ReddishPurple.At(0.8),
            ObjectText = Colour.Hex(0xE6B7D0),
            StarText = Colour.Hex(0xB9C6DD),
            Mark = Colour.Hex(0xEEF2F8),
            Star = Colour.Hex(0xFFFFFF),
            TintsStars = true,
            Plain = TextWeight.Regular,
        };

    public static Palette Night { get; } =
        new()
        {
            Page = Colour.Hex(0x000000),
            PageInk = Colour.Hex(0xFF0000),
            PageSoft = Colour.Hex(0xF00000),
            PageLine = Colour.Hex(0x480000),
            ChartInside = Colour.Hex(0x150000),
            ChartOutside = Colour.Hex(0x000000),
            Rim = Colour.Hex(0x780000),
            Grid = Colour.Hex(0xFF0000).At(0.22),
            Panel = Colour.Hex(0xFF0000),
            Frame = Colour.Hex(0xFF0000),
            Target = Colour.Hex(0xFF0000),
            FallsShort = Colour.Hex(0xFF0000),
            Outside = Colour.Hex(0xC80000),
            Object = Colour.Hex(0xC80000),
            ObjectText = Colour.Hex(0xFA0000),
            StarText = Colour.Hex(0xFA0000),
            Mark = Colour.Hex(0xFF0000),
            Star = Colour.Hex(0xFF0000),
            TintsStars = false,
            Plain = TextWeight.Medium,
        };

    /// <summary>The paper around the chart.</summary>
    public required Colour Page { get; init; }

    /// <summary>Text on the paper.</summary>
    public required Colour PageInk { get; init; }

    /// <summary>Text of less weight on the paper.</summary>
    public required Colour PageSoft { get; init; }

    /// <summary>Hairlines on the paper.</summary>
    public required Colour PageLine { get; init; }

    /// <summary>The sky inside the panels, and everywhere on a chart without panels.</summary>
    public required Colour ChartInside { get; init; }

    /// <summary>The sky outside every panel.</summary>
    public required Colour ChartOutside { get; init; }

    /// <summary>The line around the chart.</summary>
    public required Colour Rim { get; init; }

    /// <summary>Lines of right ascension and declination.</summary>
    public required Colour Grid { get; init; }

    /// <summary>Edges and numbers of panels.</summary>
    public required Colour Panel { get; init; }

    /// <summary>Edges of frames that were taken.</summary>
    public required Colour Frame { get; init; }

    /// <summary>The outline of the target, and its name.</summary>
    public required Colour Target { get; init; }

    /// <summary>The hatch over what falls short.</summary>
    public required Colour FallsShort { get; init; }

    /// <summary>The dots around the panels.</summary>
    public required Colour Outside { get; init; }

    /// <summary>Outlines of other objects.</summary>
    public required Colour Object { get; init; }

    /// <summary>Names of other objects.</summary>
    public required Colour ObjectText { get; init; }

    /// <summary>Names of stars.</summary>
    public required Colour StarText { get; init; }

    /// <summary>North, east and the scale bar.</summary>
    public required Colour Mark { get; init; }

    /// <summary>Stars, before their tint.</summary>
    public required Colour Star { get; init; }

    /// <summary>True when stars are tinted by their colour index.</summary>
    public required bool TintsStars { get; init; }

    /// <summary>The weight of plain text: thin red letters on black would be lost, so that the night has stronger ones.</summary>
    public required TextWeight Plain { get; init; }

    public static Palette Of(PicturePalette palette) =>
        palette switch
        {
            PicturePalette.Day => Day,
            PicturePalette.Night => Night,
            _ => throw new ArgumentOutOfRangeException(
                nameof(palette),
                palette,
                "There is no such palette."
            ),
        };
}
