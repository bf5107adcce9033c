namespace Framing.Drawing;

/// <summary>Colours of the night's band, beside those of the palette.</summary>
/// <param name="Day">The sky with the Sun up.</param>
/// <param name="Civil">The Sun down, less than 6° below.</param>
/// <param name="Nautical">The Sun 6 to 12° down.</param>
/// <param name="Astronomical">The Sun 12 to 18° down.</param>
/// <param name="Dark">The Sun more than 18° down.</param>
/// <param name="Ground">Below the skyline.</param>
/// <param name="Skyline">The line of the skyline.</param>
/// <param name="Line">Altitudes and hours.</param>
/// <param name="OnSky">Text on the sky.</param>
/// <param name="Target">The way of the panels.</param>
/// <param name="Block">Blocks of subs.</param>
/// <param name="OnBlock">Text on a block.</param>
/// <param name="Moon">The way of the Moon.</param>
internal sealed record NightInks(
    Colour Day,
    Colour Civil,
    Colour Nautical,
    Colour Astronomical,
    Colour Dark,
    Colour Ground,
    Colour Skyline,
    Colour Line,
    Colour OnSky,
    Colour Target,
    Colour Block,
    Colour OnBlock,
    Colour Moon
)
{
    private static readonly NightInks DayInks = new(
        Colour.Hex(0x9FB9DE),
        Colour.Hex(0x5F7FB2),
        Colour.Hex(0x3B5886),
        Colour.Hex(0x24395F),
        Colour.Hex(0x12233F),
        Colour.Hex(0x060B14),
        Colour.Hex(0xD5D1C6),
        Colour.Hex(0x8FA6CC).At(0.3),
        Colour.Hex(0xEEF2F8),
        Colour.Hex(0x56B4E9),
        Colour.Hex(0xE69F00),
        Colour.Hex(0x12233F),
        Colour.Hex(0xF0E442)
    );

    private static readonly NightInks RedInks = new(
        Colour.Hex(0x5A0000),
        Colour.Hex(0x420000),
        Colour.Hex(0x2E0000),
        Colour.Hex(0x1E0000),
        Colour.Hex(0x0E0000),
        Colour.Hex(0x000000),
        Colour.Hex(0xA00000),
        Colour.Hex(0xFF0000).At(0.22),
        Colour.Hex(0xFF0000),
        Colour.Hex(0xFF0000),
        Colour.Hex(0xE00000),
        Colour.Hex(0x000000),
        Colour.Hex(0xFF0000)
    );

    public static NightInks Of(PicturePalette palette) =>
        palette == PicturePalette.Night ? RedInks : DayInks;
}
