using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>A picture in memory: one or three planes of numbers, and where it lies on the sky.</summary>
/// <remarks>
/// <para>
/// Row r of a plane is y = r + 1 of FITS pixels: row 0 is the first stored row of a FITS file and the bottom row, as shown, of every other.
/// <see cref="RowsTopDown"/> says which end is shown on top.
/// </para>
/// <para>Samples that are not defined, or wholly transparent, are NaN. Numbers are those of the file, not scaled.</para>
/// </remarks>
public sealed class Picture
{
    private readonly float[][] planes;

    /// <summary>Makes a picture.</summary>
    /// <param name="width">Columns, 1 or more.</param>
    /// <param name="height">Rows, 1 or more.</param>
    /// <param name="planes">One plane (grey) or three (red, green, blue), each of width · height samples; taken, not copied.</param>
    /// <exception cref="ArgumentException">The planes do not fit the size.</exception>
    public Picture(int width, int height, params float[][] planes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        ArgumentNullException.ThrowIfNull(planes);
        if (
            planes.Length is not (1 or 3)
            || Array.Exists(planes, plane => plane.Length != (long)width * height)
        )
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"A picture of {width} x {height} has one plane or three of {(long)width * height} samples each."
                ),
                nameof(planes)
            );
        }

        Width = width;
        Height = height;
        this.planes = planes;
    }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>1 for grey, 3 for red, green and blue.</summary>
    public int Planes => planes.Length;

    /// <summary>How many pixels of the file were averaged into one, along each side; 1 when none were.</summary>
    public int Reduction { get; init; } = 1;

    /// <summary>The file's name as the caller gave it; empty for a picture that comes from no file.</summary>
    public string Name { get; init; } = string.Empty;

    /// <summary>What kind of file it comes from.</summary>
    public PictureFormat Format { get; init; }

    /// <summary>What a sample of the file is.</summary>
    public SampleFormat SampleFormat { get; init; } = SampleFormat.Float32;

    /// <summary>True when row 0 is shown on top, so that y grows downwards as displayed.</summary>
    public bool RowsTopDown { get; init; }

    /// <summary>Where these pixels (reduced ones, if they are) lie on the sky; null when nothing tells.</summary>
    public WorldCoordinates? Coordinates { get; init; }

    /// <summary>A plane's samples, row after row.</summary>
    /// <param name="plane">From 0.</param>
    /// <returns>Width · height samples.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such plane.</exception>
    public ReadOnlySpan<float> Plane(int plane)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(plane);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(plane, planes.Length);
        return planes[plane];
    }

    /// <summary>A plane's samples as the array that holds them: to be read only.</summary>
    internal float[] Samples(int plane) => planes[plane];

    /// <summary>The same picture with square blocks of pixels averaged into one.</summary>
    /// <param name="factor">Pixels along a block's side, 1 up to the shorter side; columns and rows left over are dropped.</param>
    /// <returns>The smaller picture; this one when the factor is 1.</returns>
    public Picture Reduced(int factor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(factor, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(factor, Math.Min(Width, Height));
        if (factor == 1)
        {
            return this;
        }

        var smaller = new BlockAverage(Width, Height, factor);
        return new(
            smaller.Width,
            smaller.Height,
            Array.ConvertAll(
                planes,
                plane =>
                {
                    var result = new float[smaller.Width * smaller.Height];
                    Parallel.For(
                        0,
                        smaller.Height,
                        row =>
                            smaller.Average(
                                plane.AsSpan(row * factor * Width, factor * Width),
                                result.AsSpan(row * smaller.Width, smaller.Width)
                            )
                    );
                    return result;
                }
            )
        )
        {
            Reduction = Reduction * factor,
            Name = Name,
            Format = Format,
            SampleFormat = SampleFormat,
            RowsTopDown = RowsTopDown,
            Coordinates = Coordinates?.Binned(factor),
        };
    }
}
