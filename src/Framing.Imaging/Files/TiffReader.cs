using BitMiracle.LibTiff.Classic;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>Decodes TIFF files after <see cref="TiffLayout"/> let them pass.</summary>
internal static class TiffReader
{
    /// <summary>Takes a stored row: of one plane, or of all of them side by side.</summary>
    /// <param name="plane">From 0 where planes are stored by themselves, else 0.</param>
    /// <param name="row">From 0 at the stored top.</param>
    /// <param name="bytes">The samples in the machine's own byte order.</param>
    public delegate void RowTaker(int plane, int row, ReadOnlySpan<byte> bytes);

    /// <summary>Decodes a file row by row, plane after plane.</summary>
    public static void Read(string name, Stream stream, TiffLayout layout, RowTaker take)
    {
        try
        {
            Tiff.SetErrorHandler(new Silence());
            using var tiff =
                Tiff.ClientOpen(name, "r", stream, new TiffView(stream, layout))
                ?? throw Damaged(name, null);
            for (var plane = 0; plane < (layout.Planar ? layout.Samples : 1); plane++)
            {
                if (layout.Tiled)
                {
                    ReadTiles(name, tiff, layout, plane, take);
                }
                else
                {
                    ReadStrips(name, tiff, layout, plane, take);
                }
            }
        }
        catch (Exception problem) when (problem is not UnreadableFileException)
        {
            // The library throws many kinds of exceptions at damaged data; each means that the file is damaged.
            throw Damaged(name, problem);
        }
    }

    private static UnreadableFileException Damaged(string name, Exception? problem) =>
        new(
            name,
            "picture data",
            "they are damaged",
            "copy it again from where it came, or save it again",
            problem
        );

    private static void ReadStrips(
        string name,
        Tiff tiff,
        TiffLayout layout,
        int plane,
        RowTaker take
    )
    {
        var row = new byte[RowBytes(layout, layout.Width)];
        if (tiff.ScanlineSize() != row.Length)
        {
            throw Damaged(name, null);
        }

        for (var i = 0; i < layout.Height; i++)
        {
            if (!tiff.ReadScanline(row, i, (short)plane))
            {
                throw Damaged(name, null);
            }

            take(plane, i, row);
        }
    }

    private static void ReadTiles(
        string name,
        Tiff tiff,
        TiffLayout layout,
        int plane,
        RowTaker take
    )
    {
        var tileRow = RowBytes(layout, layout.TileWidth);
        var tile = new byte[tileRow * layout.TileHeight];
        if (tiff.TileSize() != tile.Length)
        {
            throw Damaged(name, null);
        }

        var across = (int)(((long)layout.Width + layout.TileWidth - 1) / layout.TileWidth);
        var bandRow = tileRow * across;
        var band = new byte[bandRow * layout.TileHeight];
        var wanted = RowBytes(layout, layout.Width);
        for (var top = 0; top < layout.Height; top += layout.TileHeight)
        {
            for (var column = 0; column < across; column++)
            {
                if (
                    tiff.ReadTile(tile, 0, column * layout.TileWidth, top, 0, (short)plane)
                    != tile.Length
                )
                {
                    throw Damaged(name, null);
                }

                for (var i = 0; i < layout.TileHeight; i++)
                {
                    tile.AsSpan(i * tileRow, tileRow)
                        .CopyTo(band.AsSpan((i * bandRow) + (column * tileRow)));
                }
            }

            var rows = Math.Min(layout.TileHeight, layout.Height - top);
            for (var i = 0; i < rows; i++)
            {
                take(plane, top + i, band.AsSpan(i * bandRow, wanted));
            }
        }
    }

    private static int RowBytes(TiffLayout layout, int columns) =>
        checked(
            (int)((((long)columns * (layout.Planar ? 1 : layout.Samples) * layout.Bits) + 7) / 8)
        );

    /// <summary>Keeps the library from writing its warnings to the console.</summary>
    private sealed class Silence : TiffErrorHandler
    {
        public override void ErrorHandler(
            Tiff tif,
            string method,
            string format,
            params object[] args
        ) { }

        public override void ErrorHandlerExt(
            Tiff tif,
            object clientData,
            string method,
            string format,
            params object[] args
        ) { }

        public override void WarningHandler(
            Tiff tif,
            string method,
            string format,
            params object[] args
        ) { }

        public override void WarningHandlerExt(
            Tiff tif,
            object clientData,
            string method,
            string format,
            params object[] args
        ) { }
    }
}
