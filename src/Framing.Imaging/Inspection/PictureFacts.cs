using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>What a picture file is: its shape, how it was taken, where it lies on the sky, and what a person should know.</summary>
/// <remarks>
/// Pixel positions are as FITS counts and as the file's axes run. PNG, JPEG and TIFF have no axes of their own:
/// there the middle of the pixel shown at the bottom left is (1, 1) and y grows upwards.
/// </remarks>
public sealed record PictureFacts
{
    /// <summary>The file as the caller named it.</summary>
    public required string Name { get; init; }

    /// <summary>What kind of file it is.</summary>
    public required PictureFormat Format { get; init; }

    /// <summary>How a FITS file packs its samples ("gzip", "RICE_1"); null where it does not, and for other files.</summary>
    public string? Packing { get; init; }

    /// <summary>Columns.</summary>
    public required int Width { get; init; }

    /// <summary>Rows.</summary>
    public required int Height { get; init; }

    /// <summary>Planes, alpha left out: 1 for grey, 3 for colours.</summary>
    public required int Planes { get; init; }

    /// <summary>True when the file has transparency too; it follows the planes in <see cref="PictureFile.ReadSamples"/>.</summary>
    public required bool HasAlpha { get; init; }

    /// <summary>What a sample is.</summary>
    public required SampleFormat SampleFormat { get; init; }

    /// <summary>True when y grows downwards as displayed (ROWORDER = TOP-DOWN).</summary>
    public required bool RowsTopDown { get; init; }

    /// <summary>How the frame was taken.</summary>
    public required RigFacts Rig { get; init; }

    /// <summary>What the header, or the cards beside the picture, say of the sky.</summary>
    public required HeaderSolution Solution { get; init; }

    /// <summary>The file beside the picture from which the solution comes; null when it is the picture's own.</summary>
    public required string? SolutionFile { get; init; }

    /// <summary>Where the picture lies on the sky; null without a solution.</summary>
    public required SkyFacts? Sky { get; init; }

    /// <summary>What a person should know, one sentence each.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>The solution as the file's axes run; null when there is none.</summary>
    public WorldCoordinates? Coordinates => Solution.Coordinates;

    /// <summary>"uint16", "float32": the name of the sample format in outputs.</summary>
    public string SampleFormatName =>
        SampleFormat switch
        {
            SampleFormat.UInt8 => "uint8",
            SampleFormat.Int8 => "int8",
            SampleFormat.Int16 => "int16",
            SampleFormat.UInt16 => "uint16",
            SampleFormat.Int32 => "int32",
            SampleFormat.UInt32 => "uint32",
            SampleFormat.Int64 => "int64",
            SampleFormat.UInt64 => "uint64",
            SampleFormat.Float32 => "float32",
            _ => "float64",
        };

    /// <summary>True when a place lies within the picture, its outer edges included.</summary>
    /// <param name="pixel">The place.</param>
    /// <returns>True within 0.5 to width + 0.5 and 0.5 to height + 0.5.</returns>
    public bool Contains(PixelPosition pixel) =>
        pixel.X >= 0.5 && pixel.X <= Width + 0.5 && pixel.Y >= 0.5 && pixel.Y <= Height + 0.5;
}
