using System.Globalization;
using Framing.Fits;

namespace Framing.Rehearsal;

/// <summary>Writes made frames as a camera's program would: FITS, 16 bits, no solution in the header.</summary>
public static class FrameFile
{
    /// <summary>Writes a frame.</summary>
    /// <param name="path">The file.</param>
    /// <param name="frame">The frame.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string path, RehearsedFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        FitsWriter.WriteImage<ushort>(
            path,
            frame.Width,
            frame.Height,
            1,
            frame.Samples,
            Cards(frame)
        );
    }

    /// <summary>The cards that say how the frame was taken.</summary>
    /// <param name="frame">The frame.</param>
    /// <returns>The cards.</returns>
    public static FitsHeaderBuilder Cards(RehearsedFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var recipe = frame.Recipe;
        var camera = recipe.Camera;
        var cards = new FitsHeaderBuilder();
        if (recipe.ObjectName is { } name)
        {
            cards.Add("OBJECT", Ascii(name));
        }

        cards
            .Add("IMAGETYP", Kind(recipe.Kind))
            .Add(
                "DATE-OBS",
                recipe.Exposure.Start.ToString(
                    "yyyy-MM-dd'T'HH:mm:ss.fff",
                    CultureInfo.InvariantCulture
                ),
                "start of the exposure, UTC"
            )
            .Add("EXPTIME", recipe.Kind == FrameKind.Bias ? 0.0 : recipe.Exposure.Seconds, "s")
            .Add("FILTER", Ascii(recipe.Exposure.Filter))
            .Add(
                "FOCALLEN",
                recipe.Lens.NominalFocalLengthMillimetres ?? recipe.Lens.FocalLengthMillimetres,
                "mm, as set"
            )
            .Add("XPIXSZ", camera.Sensor.PixelMicrometres * camera.Binning, "micrometres, binned")
            .Add("YPIXSZ", camera.Sensor.PixelMicrometres * camera.Binning)
            .Add("XBINNING", (long)camera.Binning)
            .Add("YBINNING", (long)camera.Binning)
            .Add("ROWORDER", camera.RowsTopDown ? "TOP-DOWN" : "BOTTOM-UP");
        if (camera.ColourPattern is { } pattern)
        {
            cards.Add("BAYERPAT", pattern, "of the first two rows as stored");
        }

        return cards
            .Add("INSTRUME", "rehearsal")
            .AddComment("Made for practice: not a picture of the sky.");
    }

    private static string Kind(FrameKind kind) =>
        kind switch
        {
            FrameKind.Light => "light",
            FrameKind.Flat => "flat",
            FrameKind.Dark => "dark",
            _ => "bias",
        };

    private static string Ascii(string text) =>
        string.Concat(text.Select(c => c is >= ' ' and <= '~' ? c : '?'));
}
