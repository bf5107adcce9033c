using System.Globalization;

namespace Framing.Drawing;

/// <summary>The size of a picture in pixels: 320 x 200 to 8000 x 8000.</summary>
public readonly record struct PictureSize
{
    private const int LeastWidth = 320;
    private const int LeastHeight = 200;
    private const int Most = 8000;

    private readonly int width;
    private readonly int height;

    /// <summary>Makes a size.</summary>
    /// <param name="width">Columns, 320 to 8000.</param>
    /// <param name="height">Rows, 200 to 8000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is out of its range.</exception>
    public PictureSize(int width, int height)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, LeastWidth);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(width, Most);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, LeastHeight);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(height, Most);
        this.width = width;
        this.height = height;
    }

    /// <summary>1600 x 1000; also what <c>default(PictureSize)</c> is.</summary>
    public static PictureSize Default => default;

    /// <summary>Columns.</summary>
    public int Width => width == 0 ? 1600 : width;

    /// <summary>Rows.</summary>
    public int Height => height == 0 ? 1000 : height;

    /// <summary>Reads a size such as <c>1600x1000</c>.</summary>
    /// <param name="text">Columns and rows with an x between them; spaces around the numbers do not matter.</param>
    /// <param name="size">The size; meaningless when the answer is false.</param>
    /// <returns>False when the text is no size, or one out of range.</returns>
    public static bool TryParse(string? text, out PictureSize size)
    {
        size = default;
        var parts = (text ?? string.Empty).Split('x', 'X', '×');
        if (
            parts.Length != 2
            || !int.TryParse(
                parts[0].Trim(),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var columns
            )
            || !int.TryParse(
                parts[1].Trim(),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var rows
            )
            || columns is < LeastWidth or > Most
            || rows is < LeastHeight or > Most
        )
        {
            return false;
        }

        size = new(columns, rows);
        return true;
    }

    /// <summary>The size as <see cref="TryParse"/> reads it.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Width}x{Height}");
}
