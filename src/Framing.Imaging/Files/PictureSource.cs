using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>An open picture file of one of the formats that are read.</summary>
internal abstract class PictureSource : IDisposable
{
    protected PictureSource(string name) => Name = name;

    public string Name { get; }

    public abstract PictureFormat Format { get; }

    public abstract int Width { get; }

    public abstract int Height { get; }

    /// <summary>Planes as the file has them, alpha left out.</summary>
    public abstract int Planes { get; }

    public virtual bool HasAlpha => false;

    public abstract SampleFormat SampleFormat { get; }

    /// <summary>How a FITS file packs its samples ("gzip", "RICE_1"); null where it does not, and for other files.</summary>
    public virtual string? Packing => null;

    /// <summary>True when y grows downwards as displayed.</summary>
    public virtual bool RowsTopDown => false;

    /// <summary>The file's own cards; empty where it has none.</summary>
    public virtual FitsHeader Header => FitsHeader.Empty;

    /// <summary>How the frame was taken, where the file says it elsewhere than in header cards.</summary>
    public virtual RigFacts? Rig => null;

    public virtual IReadOnlyList<string> Warnings => [];

    /// <summary>Planes that make the picture: three for colours, else the first alone.</summary>
    protected int ShownPlanes => Planes == 3 ? 3 : 1;

    public static PictureSource Open(string path)
    {
        Span<byte> start = stackalloc byte[16];
        Stream? stream = null;
        try
        {
            stream = new FileStream(
                path,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete
            );
            start = start[..stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)];
            PictureSource? source =
                start.StartsWith(PngLayout.Signature) ? new PngSource(path, stream)
                : start.StartsWith(JpegLayout.Signature) ? new JpegSource(path, stream)
                : TiffLayout.Begins(start) ? new TiffSource(path, stream)
                : null;
            if (source is not null)
            {
                stream = null;
                return source;
            }
        }
        catch (Exception problem)
            when (problem
                    is IOException
                        or UnauthorizedAccessException
                        or NotSupportedException
                        or ArgumentException
            )
        {
            // Opening it as FITS tells the reason in the same words as everywhere.
            return new FitsSource(FitsFile.Open(path));
        }
        finally
        {
            stream?.Dispose();
        }

        return FitsFile.IsFits(start) || start is [0x1F, 0x8B, ..]
            ? new FitsSource(FitsFile.Open(path))
            : throw Refuse(path, start);
    }

    /// <summary>Reads the picture, its pixels averaged in blocks.</summary>
    /// <param name="factor">Pixels along a block's side.</param>
    /// <param name="coordinates">Where the file's pixels lie on the sky, or null.</param>
    public abstract Picture Read(int factor, WorldCoordinates? coordinates);

    /// <summary>The samples of one pixel, one a plane, alpha last where there is one.</summary>
    /// <param name="column">From 0.</param>
    /// <param name="row">From 0, at y = 1.</param>
    public abstract IReadOnlyList<SampleValue> ReadSamples(int column, int row);

    public abstract void Dispose();

    protected Picture Make(
        BlockAverage size,
        int factor,
        float[][] planes,
        WorldCoordinates? coordinates
    ) =>
        new(size.Width, size.Height, planes)
        {
            Reduction = factor,
            Name = Name,
            Format = Format,
            SampleFormat = SampleFormat,
            RowsTopDown = RowsTopDown,
            Coordinates = factor == 1 ? coordinates : coordinates?.Binned(factor),
        };

    private static UnreadableFileException Refuse(string path, ReadOnlySpan<byte> start)
    {
        const string kinds = "FITS, PNG, JPEG and TIFF pictures are read";
        return start.IsEmpty
            ? new(path, "file", "it is empty", kinds)
            : new(path, "format", "it is neither a FITS nor a PNG, JPEG or TIFF file", kinds);
    }
}
