using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>The first picture of a TIFF file, turned as its orientation says: y = 1 is the bottom row as shown.</summary>
internal sealed class TiffSource : PictureSource
{
    private readonly Stream stream;
    private readonly TiffLayout layout;
    private readonly Orientation orientation;
    private readonly List<string> warnings = [];

    public TiffSource(string name, Stream stream)
        : base(name)
    {
        this.stream = stream;
        layout = TiffLayout.Read(name, stream);
        orientation = new(
            (int)Math.Clamp(layout.Tags.Number(ExifFacts.OrientationTag) ?? 1, 0, 9),
            layout.Width,
            layout.Height
        );
        Rig = ExifFacts.Rig(layout.Tags, warnings);
        if (layout.Tags.Next != 0)
        {
            warnings.Add("The file holds more pictures than one; the first is read.");
        }

        if (
            layout.Samples
            > Stored(layout.Planes, palette: layout.Photometric == 3) + (HasAlpha ? 1 : 0)
        )
        {
            warnings.Add(
                FormattableString.Invariant(
                    $"The file has {layout.Samples} samples a pixel; those beyond grey, colours and transparency are left out."
                )
            );
        }

        if (layout.Photometric == 0)
        {
            warnings.Add(
                layout.Kind == 1
                    ? "The file counts from white: its levels are turned round, so that more is brighter."
                    : "The file says it counts from white; its levels are taken as they stand."
            );
        }
    }

    public override PictureFormat Format => PictureFormat.Tiff;

    public override int Width => orientation.Width;

    public override int Height => orientation.Height;

    public override int Planes => layout.Planes;

    public override bool HasAlpha => layout.Alpha >= 0;

    public override SampleFormat SampleFormat => TiffSamples.FormatOf(layout);

    public override RigFacts? Rig { get; }

    public override IReadOnlyList<string> Warnings => warnings;

    public override Picture Read(int factor, WorldCoordinates? coordinates)
    {
        var planes = new PlaneBuilder(orientation, factor, Planes);
        var values = new float[layout.Width];
        var alpha = new float[layout.Width];
        TiffReader.Read(
            Name,
            stream,
            layout,
            (part, row, bytes) =>
            {
                if (HasAlpha && !layout.Planar)
                {
                    TiffSamples.Spread(layout, bytes, layout.Alpha, Planes, alpha);
                }

                for (var plane = 0; plane < Planes; plane++)
                {
                    var first = layout.Photometric == 3 ? 0 : plane;
                    if (layout.Planar && first != part)
                    {
                        continue;
                    }

                    TiffSamples.Spread(layout, bytes, layout.Planar ? 0 : first, plane, values);
                    if (HasAlpha && !layout.Planar)
                    {
                        Clear(values, alpha);
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
        var found = new SampleValue[Planes + (HasAlpha ? 1 : 0)];
        TiffReader.Read(
            Name,
            stream,
            layout,
            (part, stored, bytes) =>
            {
                for (var plane = 0; stored == down && plane < found.Length; plane++)
                {
                    var first =
                        plane == Planes ? layout.Alpha
                        : layout.Photometric == 3 ? 0
                        : plane;
                    if (!layout.Planar || first == part)
                    {
                        found[plane] = TiffSamples.Sample(
                            layout,
                            bytes,
                            layout.Planar ? across : (across * layout.Samples) + first,
                            plane
                        );
                    }
                }
            }
        );
        return found;
    }

    public override void Dispose() => stream.Dispose();

    private static int Stored(int planes, bool palette) => palette ? 1 : planes;

    /// <summary>A pixel that is wholly transparent holds nothing.</summary>
    private static void Clear(float[] values, float[] alpha)
    {
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = alpha[i] == 0f ? float.NaN : values[i];
        }
    }
}
