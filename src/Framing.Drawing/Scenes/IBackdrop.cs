using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A picture that is laid on the sky under everything that is drawn.</summary>
public interface IBackdrop
{
    /// <summary>True for a picture that nobody took: the legend says so, and stars keep their full size over it.</summary>
    bool IsMadeUp => false;

    /// <summary>Fills the chart with the picture.</summary>
    /// <param name="chart">World coordinates of the chart's pixels, rows counted upwards as FITS has it.</param>
    /// <param name="width">Columns of the chart.</param>
    /// <param name="height">Rows of the chart.</param>
    /// <param name="pixels">
    /// Receives width x height pixels, the top row first, four bytes each: red, green, blue, opacity (0 where the picture
    /// does not reach). Colour is not multiplied by opacity.
    /// </param>
    void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels);
}
