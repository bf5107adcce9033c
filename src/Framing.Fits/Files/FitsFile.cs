using System.Text;

namespace Framing.Fits;

/// <summary>A FITS file, open for reading.</summary>
/// <remarks>
/// <para>
/// Opening reads headers only, up to the first unit that holds an image. Lengths are held against the length of the file
/// before anything is allocated, so that memory stays within 1 MB plus the headers, whatever the file claims.
/// </para>
/// <para>Source: FITS Standard 4.0.</para>
/// </remarks>
public sealed class FitsFile : IDisposable
{
    private const int MostUnits = 10_000;

    private readonly ByteSource source;
    private readonly List<FitsUnit> units = [];
    private readonly List<string> warnings = [];
    private FitsHeader? imageHeader;

    private FitsFile(ByteSource source) => this.source = source;

    /// <summary>The file as the caller named it.</summary>
    public string Name => source.Name;

    internal ByteSource Source => source;

    /// <summary>The units up to the first one that holds an image; all of them when none does.</summary>
    public IReadOnlyList<FitsUnit> Units => units;

    /// <summary>What is odd about the file, one line each.</summary>
    public IReadOnlyList<string> Warnings => warnings;

    /// <summary>
    /// The cards of the image's unit, of a compressed image those that the plain one would have; of the primary unit when
    /// there is no image.
    /// </summary>
    public FitsHeader Header => imageHeader ?? Primary;

    /// <summary>The cards of the primary unit.</summary>
    public FitsHeader Primary => units[0].Header;

    /// <summary>How the image is packed: "gzip", or the tiles' packing such as "RICE_1"; null when it is stored plain.</summary>
    public string? Packing { get; private set; }

    /// <summary>The first image of the file, or null when it holds none.</summary>
    public FitsImage? Image { get; private set; }

    /// <summary>True when bytes are the start of a FITS file.</summary>
    /// <param name="start">The first bytes of a file, 9 or more.</param>
    /// <returns>True for the keyword SIMPLE and an equals sign.</returns>
    public static bool IsFits(ReadOnlySpan<byte> start) => start.StartsWith("SIMPLE  ="u8);

    /// <summary>Opens a file.</summary>
    /// <param name="path">Its path.</param>
    /// <returns>The open file; close it by disposing it.</returns>
    /// <exception cref="UnreadableFileException">It cannot be read, or it is no sound FITS file.</exception>
    public static FitsFile Open(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Open(ByteSource.Open(path));
    }

    /// <summary>Opens a FITS file that is held in memory.</summary>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="bytes">The whole file.</param>
    /// <returns>The open file.</returns>
    /// <exception cref="UnreadableFileException">It is no sound FITS file.</exception>
    public static FitsFile Open(string name, ReadOnlyMemory<byte> bytes) =>
        Open(ByteSource.Of(name, bytes));

    /// <summary>The first image of the file, which must be there.</summary>
    /// <returns>The image.</returns>
    /// <exception cref="UnreadableFileException">The file holds none that is read.</exception>
    public FitsImage RequireImage() =>
        Image
        ?? throw new UnreadableFileException(
            Name,
            "image",
            "the file holds none",
            "a picture has NAXIS = 2 or 3 and axes longer than 0"
        );

    /// <summary>The tables of the file, in their order; compressed images are none.</summary>
    /// <returns>The tables; their cells are read on demand, as long as the file is open.</returns>
    /// <exception cref="UnreadableFileException">A unit's header or a table's shape cannot be read.</exception>
    public IReadOnlyList<FitsTable> ReadTables()
    {
        var tables = new List<FitsTable>();
        var number = 0;
        for (long at = 0; number < MostUnits; number++)
        {
            var unit = number < units.Count ? units[number] : UnitReader.Read(source, at, number);
            if (unit.Kind is FitsUnitKind.BinaryTable or FitsUnitKind.TextTable)
            {
                tables.Add(new(source, unit));
            }

            at = unit.DataStart + Blocks(unit.DataLength);
            if (!IsExtension(source, at))
            {
                break;
            }
        }

        return tables;
    }

    /// <inheritdoc/>
    public void Dispose() => source.Dispose();

    private static FitsFile Open(ByteSource source)
    {
        var file = new FitsFile(source);
        try
        {
            file.ReadUnits();
            return file;
        }
        catch
        {
            source.Dispose();
            throw;
        }
    }

    private void ReadUnits()
    {
        CheckStart();
        for (long at = 0; units.Count < MostUnits; )
        {
            var unit = UnitReader.Read(source, at, units.Count);
            units.Add(unit);
            if (unit.Kind is FitsUnitKind.Image or FitsUnitKind.CompressedImage)
            {
                warnings.AddRange(unit.Header.Warnings);
                Image = unit.Kind == FitsUnitKind.Image ? PlainImage(unit) : TiledImage(unit);
                return;
            }

            at = unit.DataStart + Blocks(unit.DataLength);
            if (at >= source.Length || !IsExtension(source, at))
            {
                return;
            }
        }
    }

    private void CheckStart()
    {
        Span<byte> start = stackalloc byte[16];
        start = start[..(int)Math.Min(start.Length, source.Length)];
        source.ReadExactly(0, start);
        if (start.IsEmpty)
        {
            throw new UnreadableFileException(Name, "file", "it is empty", "give a FITS file");
        }

        if (!IsFits(start))
        {
            throw new UnreadableFileException(
                Name,
                "first card",
                $"it begins with \"{Encoding.Latin1.GetString(start).TrimEnd()}\"",
                "a FITS file begins with SIMPLE  ="
            );
        }
    }

    internal static bool IsExtension(ByteSource source, long at)
    {
        Span<byte> start = stackalloc byte[8];
        if (at < 0 || source.Length - at < start.Length)
        {
            return false;
        }

        source.ReadExactly(at, start);
        return start.SequenceEqual("XTENSION"u8);
    }

    private FitsImage PlainImage(FitsUnit unit)
    {
        imageHeader = InheritedHeader.Of(unit.Header, Primary);
        Packing = source.IsPacked ? "gzip" : null;
        var shape = ImageShape.Read(Name, imageHeader, warnings);
        CheckLength(unit);
        return ImageOf(source, unit.DataStart, shape, imageHeader);
    }

    private FitsImage TiledImage(FitsUnit unit)
    {
        var layout = TileLayout.Read(Name, unit.Header);
        imageHeader = InheritedHeader.Of(PlainHeader.Of(unit.Header, layout), Primary);
        Packing = layout.Packing;
        var shape = ImageShape.Read(Name, imageHeader, warnings);
        var tiles = new TiledBytes(source, new(source, unit), layout);
        return ImageOf(tiles, 0, shape, imageHeader);
    }

    private FitsImage ImageOf(ByteSource bytes, long start, ImageShape shape, FitsHeader header)
    {
        var scaling = ScalingReader.Read(Name, header, warnings);
        if (shape.Interleaved)
        {
            bytes = new InterleavedBytes(
                bytes,
                start,
                (long)shape.Width * shape.Height,
                shape.Planes,
                scaling.BytesPerSample
            );
            start = 0;
        }

        return new(bytes, start, shape.Width, shape.Height, shape.Planes, scaling)
        {
            IsInterleaved = shape.Interleaved,
        };
    }

    private void CheckLength(FitsUnit unit)
    {
        var there = Math.Max(0, source.Length - unit.DataStart);
        if (there < unit.DataLength)
        {
            throw new UnreadableFileException(
                Name,
                "image data",
                FormattableString.Invariant(
                    $"the file is truncated: {there} of {unit.DataLength} bytes are there"
                ),
                "copy it again"
            );
        }
    }

    internal static long Blocks(long length) =>
        (length + HeaderReader.Block - 1) / HeaderReader.Block * HeaderReader.Block;
}
