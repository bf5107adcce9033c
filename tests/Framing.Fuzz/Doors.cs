using Framing.Fits;
using Framing.Imaging;
using Framing.Jpeg;

namespace Framing.Fuzz;

/// <summary>The doors by which files come in, each taken from the first byte to the last sample.</summary>
internal static class Doors
{
    private const int MostPixels = 1_000_000;

    /// <summary>A door by its name; null when there is none of that name.</summary>
    public static Action<byte[]>? Of(string name) =>
        name switch
        {
            "fits" => Fits,
            "png" => Png,
            "jpeg" => bytes =>
                Raster(new JpegSource("fuzzed.jpg", new MemoryStream(bytes), DecodeHere)),
            "tiff" => bytes => Raster(new TiffSource("fuzzed.tif", new MemoryStream(bytes))),
            _ => null,
        };

    /// <summary>Passes bytes through a door. The one exception that may come out of it for bad input is swallowed.</summary>
    /// <returns>True for an answer, false for a refusal in one line.</returns>
    public static bool Pass(Action<byte[]> door, byte[] bytes)
    {
        try
        {
            door(bytes);
            return true;
        }
        catch (UnreadableFileException refusal)
        {
            return refusal.Message.Contains('\n', StringComparison.Ordinal)
                ? throw new InvalidOperationException("A refusal of more than one line.", refusal)
                : false;
        }
    }

    private static void Fits(byte[] bytes)
    {
        using var file = FitsFile.Open("fuzzed.fits", bytes);
        WorldCoordinatesReader.Read(file.Header);
        RigFacts.Read(file.Header, new List<string>());
        if (file.Image is { } image)
        {
            var rows = new float[image.Width];
            for (var plane = 0; plane < image.Planes; plane++)
            {
                for (var row = 0; row < image.Height; row++)
                {
                    image.ReadRows(plane, row, rows);
                }
            }

            image.ReadSample(image.Planes - 1, image.Width - 1, image.Height - 1);
        }

        foreach (var table in file.ReadTables())
        {
            foreach (var column in table.Columns)
            {
                if (column.Kind != FitsColumnKind.Text)
                {
                    table.ReadColumn(column);
                }
                else if (table.RowCount > 0)
                {
                    table.ReadText(column, table.RowCount - 1);
                }
            }
        }
    }

    /// <summary>Checksums are made right first: else every change would end there.</summary>
    private static void Png(byte[] bytes)
    {
        PngSums.Mend(bytes);
        Raster(new PngSource("fuzzed.png", new MemoryStream(bytes)));
    }

    /// <summary>The decoder of the door in this process: a fault of it is to be seen, and starting one for each input is slow.</summary>
    private static void DecodeHere(
        string name,
        Stream jpeg,
        JpegLayout layout,
        int rows,
        JpegRowTaker take
    )
    {
        var row = 0;
        var bytes = ((MemoryStream)jpeg).ToArray();
        var given = ScanlineDecoder.Decode(
            bytes,
            layout.Width,
            layout.Height,
            layout.Planes,
            rows,
            samples => take(row++, samples)
        );
        if (given < rows)
        {
            throw new UnreadableFileException(name, "picture data", "cut short", "copy it again");
        }
    }

    private static void Raster(PictureSource source)
    {
        using (source)
        {
            source.Read(BlockAverage.FactorFor(source.Width, source.Height, MostPixels), null);
            source.ReadSamples(source.Width - 1, source.Height - 1);
        }
    }
}
