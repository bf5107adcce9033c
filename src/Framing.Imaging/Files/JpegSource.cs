using System.Runtime.InteropServices;
using Framing.Fits;
using Framing.Sky;
using SkiaSharp;

namespace Framing.Imaging;

/// <summary>A picture in a JPEG file, turned as its orientation says: y = 1 is the bottom row as shown, x = 1 the left column.</summary>
internal sealed class JpegSource : PictureSource
{
    private readonly Stream stream;
    private readonly JpegLayout layout;
    private readonly Orientation orientation;
    private readonly List<string> warnings = [];

    public JpegSource(string name, Stream stream)
        : base(name)
    {
        this.stream = stream;
        layout = JpegLayout.Read(name, stream);
        if (stream.Length > JpegLayout.MostBytes)
        {
            throw new UnreadableFileException(
                name,
                "file",
                FormattableString.Invariant($"{stream.Length} bytes"),
                FormattableString.Invariant(
                    $"a JPEG of at most {JpegLayout.MostBytes / 1_000_000} million bytes is read"
                )
            );
        }

        orientation = new(
            (int)Math.Clamp(layout.Tags?.Number(ExifFacts.OrientationTag) ?? 1, 0, 9),
            layout.Width,
            layout.Height
        );
        Rig = layout.Tags is { } tags ? ExifFacts.Rig(tags, warnings) : null;
    }

    public override PictureFormat Format => PictureFormat.Jpeg;

    public override int Width => orientation.Width;

    public override int Height => orientation.Height;

    public override int Planes => layout.Planes;

    public override SampleFormat SampleFormat => SampleFormat.UInt8;

    public override RigFacts? Rig { get; }

    public override IReadOnlyList<string> Warnings => warnings;

    public override Picture Read(int factor, WorldCoordinates? coordinates)
    {
        var planes = new PlaneBuilder(orientation, factor, Planes);
        var values = new float[layout.Width];
        var step = Step;
        Decode(
            layout.Height,
            (row, bytes) =>
            {
                for (var plane = 0; plane < Planes; plane++)
                {
                    for (var column = 0; column < values.Length; column++)
                    {
                        values[column] = bytes[(column * step) + plane];
                    }

                    planes.Put(plane, row, values);
                }
            }
        );
        return Make(planes.Size, factor, planes.Finish(), coordinates);
    }

    public override IReadOnlyList<SampleValue> ReadSamples(int column, int row)
    {
        var (across, down) = orientation.Stored(column, Height - 1 - row);
        var found = new SampleValue[Planes];
        Decode(
            down + 1,
            (stored, bytes) =>
            {
                for (var plane = 0; stored == down && plane < Planes; plane++)
                {
                    var sample = bytes[(across * Step) + plane];
                    found[plane] = new(sample, sample);
                }
            }
        );
        return found;
    }

    public override void Dispose() => stream.Dispose();

    private delegate void RowTaker(int row, ReadOnlySpan<byte> samples);

    /// <summary>Bytes of a decoded pixel.</summary>
    private int Step => Planes == 1 ? 1 : 4;

    /// <summary>Decodes stored rows from the top, one after another.</summary>
    private void Decode(int rows, RowTaker take)
    {
        stream.Position = 0;
        using var data = SKData.Create(stream, stream.Length);
        using var codec = data is null ? null : SKCodec.Create(data);
        if (codec is null || codec.Info.Width != layout.Width || codec.Info.Height != layout.Height)
        {
            throw Damaged(0);
        }

        // No colour space: the numbers of the file, not those of a screen.
        var info = new SKImageInfo(
            layout.Width,
            layout.Height,
            Planes == 1 ? SKColorType.Gray8 : SKColorType.Rgba8888,
            SKAlphaType.Opaque
        );
        if (codec.StartScanlineDecode(info) != SKCodecResult.Success)
        {
            throw Damaged(0);
        }

        var bytes = new byte[info.RowBytes];
        var handle = GCHandle.Alloc(bytes, GCHandleType.Pinned);
        try
        {
            for (var row = 0; row < rows; row++)
            {
                if (codec.GetScanlines(handle.AddrOfPinnedObject(), 1, bytes.Length) != 1)
                {
                    throw Damaged(row);
                }

                take(row, bytes);
            }
        }
        finally
        {
            handle.Free();
        }
    }

    private UnreadableFileException Damaged(int row) =>
        new(
            Name,
            "picture data",
            FormattableString.Invariant(
                $"cut short or damaged, {row} of {layout.Height} rows can be read"
            ),
            "copy it again from where it came, or save it again"
        );
}
