using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>A picture in a JPEG file, turned as its orientation says: y = 1 is the bottom row as shown, x = 1 the left column.</summary>
internal sealed class JpegSource : PictureSource
{
    private readonly Stream stream;
    private readonly JpegLayout layout;
    private readonly Orientation orientation;
    private readonly List<string> warnings = [];
    private readonly JpegRows decode;

    public JpegSource(string name, Stream stream, JpegRows? decode = null)
        : base(name)
    {
        this.stream = stream;
        this.decode = decode ?? JpegProcess.OfTheProgram().Read;
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
        var step = Planes;
        decode(
            Name,
            stream,
            layout,
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
        decode(
            Name,
            stream,
            layout,
            down + 1,
            (stored, bytes) =>
            {
                for (var plane = 0; stored == down && plane < Planes; plane++)
                {
                    var sample = bytes[(across * Planes) + plane];
                    found[plane] = new(sample, sample);
                }
            }
        );
        return found;
    }

    public override void Dispose() => stream.Dispose();
}
