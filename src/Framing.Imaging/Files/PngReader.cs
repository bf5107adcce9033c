using Framing.Fits;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Memory;
using SixLabors.ImageSharp.PixelFormats;

namespace Framing.Imaging;

/// <summary>Decodes PNG files, with the PNG module of the library alone and after <see cref="PngLayout"/> let them pass.</summary>
internal static class PngReader
{
    /// <summary>The samples of one row, top row first: one value a plane, and 0 to 65535 or 255 of alpha where there is one.</summary>
    /// <param name="row">The row, from 0 at the top.</param>
    /// <param name="samples">Planes one after another for each pixel, alpha last.</param>
    public delegate void RowTaker(int row, ReadOnlySpan<ushort> samples);

    /// <summary>Decodes a file row by row.</summary>
    public static void Read(string name, Stream stream, PngLayout layout, RowTaker take)
    {
        try
        {
            switch (layout.BitDepth == 16, layout.Planes == 1, layout.HasAlpha)
            {
                case (true, true, false):
                    Decode<L16>(name, stream, layout, take);
                    break;
                case (true, true, true):
                    Decode<La32>(name, stream, layout, take);
                    break;
                case (true, false, false):
                    Decode<Rgb48>(name, stream, layout, take);
                    break;
                case (true, false, true):
                    Decode<Rgba64>(name, stream, layout, take);
                    break;
                case (false, true, false):
                    Decode<L8>(name, stream, layout, take);
                    break;
                case (false, true, true):
                    Decode<La16>(name, stream, layout, take);
                    break;
                case (false, false, false):
                    Decode<Rgb24>(name, stream, layout, take);
                    break;
                default:
                    Decode<Rgba32>(name, stream, layout, take);
                    break;
            }
        }
        catch (Exception problem) when (problem is not UnreadableFileException)
        {
            // The decoder throws many kinds of exceptions at damaged data (seen: ArgumentException, NullReferenceException,
            // IndexOutOfRangeException, ImageFormatException, InvalidDataException); each means that the file is damaged.
            throw new UnreadableFileException(
                name,
                "picture data",
                "they are damaged",
                "save the picture again",
                problem
            );
        }
    }

    private static void Decode<TPixel>(string name, Stream stream, PngLayout layout, RowTaker take)
        where TPixel : unmanaged, IPixel<TPixel>
    {
        var configuration = new Configuration(new PngConfigurationModule())
        {
            MemoryAllocator = MemoryAllocator.Create(
                new MemoryAllocatorOptions
                {
                    AllocationLimitMegabytes = 1024,
                    MaximumPoolSizeMegabytes = 0,
                }
            ),
        };
        // Seen with 2.1.13: an interlaced picture whose data end early keeps the decoder in an endless loop.
        if (layout.Interlaced)
        {
            layout.CheckUnpacked(name, stream);
        }

        using var needed = new FileRanges(stream, layout.Needed);
        using var image = Image.Load<TPixel>(
            configuration,
            needed,
            new PngDecoder { IgnoreMetadata = true }
        );
        if (image.Width != layout.Width || image.Height != layout.Height)
        {
            throw new UnreadableFileException(
                name,
                "size",
                FormattableString.Invariant(
                    $"{image.Width} x {image.Height} pixels came out of {layout.Width} x {layout.Height}"
                ),
                "the file is damaged; save it again"
            );
        }

        // The decoder stops without a word where the data end, and leaves the rest at zero. Rows are filled in their order,
        // so a last row that is not all zero was reached; otherwise the data are counted.
        if (!layout.Interlaced && IsZero(image.Frames.RootFrame, layout.Height - 1))
        {
            layout.CheckUnpacked(name, stream);
        }

        var samples = new ushort[layout.Width * (layout.Planes + (layout.HasAlpha ? 1 : 0))];
        image.ProcessPixelRows(accessor =>
        {
            for (var row = 0; row < accessor.Height; row++)
            {
                PngPixels.Spread(accessor.GetRowSpan(row), samples);
                take(row, samples);
            }
        });
    }

    private static bool IsZero<TPixel>(ImageFrame<TPixel> frame, int row)
        where TPixel : unmanaged, IPixel<TPixel>
    {
        var zero = true;
        frame.ProcessPixelRows(accessor =>
            zero =
                System
                    .Runtime.InteropServices.MemoryMarshal.AsBytes(accessor.GetRowSpan(row))
                    .IndexOfAnyExcept((byte)0) < 0
        );
        return zero;
    }
}
