using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>A picture in a PNG file. Its rows are turned round: y = 1 is the bottom row, x = 1 the left column.</summary>
internal sealed class PngSource : PictureSource
{
    private readonly Stream stream;
    private readonly PngLayout layout;

    public PngSource(string name, Stream stream)
        : base(name)
    {
        this.stream = stream;
        layout = PngLayout.Read(name, stream);
    }

    public override PictureFormat Format => PictureFormat.Png;

    public override int Width => layout.Width;

    public override int Height => layout.Height;

    public override int Planes => layout.Planes;

    public override bool HasAlpha => layout.HasAlpha;

    public override SampleFormat SampleFormat =>
        layout.BitDepth == 16 ? SampleFormat.UInt16 : SampleFormat.UInt8;

    public override Picture Read(int factor, WorldCoordinates? coordinates)
    {
        var size = new BlockAverage(Width, Height, factor);
        var planes = new float[Planes][];
        var rows = new float[Planes][];
        for (var plane = 0; plane < planes.Length; plane++)
        {
            planes[plane] = new float[size.Width * size.Height];
            rows[plane] = new float[factor * Width];
        }

        PngReader.Read(
            Name,
            stream,
            layout,
            (row, samples) =>
            {
                // Blocks are counted from the bottom, as FITS counts; rows left over at the top are dropped.
                var y = Height - 1 - row;
                var block = y / factor;
                if (block >= size.Height)
                {
                    return;
                }

                var within = y % factor;
                Spread(samples, rows, within * Width);
                if (within == 0)
                {
                    for (var plane = 0; plane < planes.Length; plane++)
                    {
                        size.Average(
                            rows[plane],
                            planes[plane].AsSpan(block * size.Width, size.Width)
                        );
                    }
                }
            }
        );
        return Make(size, factor, planes, coordinates);
    }

    public override IReadOnlyList<SampleValue> ReadSamples(int column, int row)
    {
        var step = Planes + (HasAlpha ? 1 : 0);
        var found = new SampleValue[step];
        PngReader.Read(
            Name,
            stream,
            layout,
            (fromTop, samples) =>
            {
                if (fromTop == Height - 1 - row)
                {
                    for (var i = 0; i < step; i++)
                    {
                        var sample = samples[(column * step) + i];
                        found[i] = new(sample, sample);
                    }
                }
            }
        );
        return found;
    }

    public override void Dispose() => stream.Dispose();

    /// <summary>Parts the samples of a row into planes; a pixel that is wholly transparent holds nothing.</summary>
    private void Spread(ReadOnlySpan<ushort> samples, float[][] rows, int start)
    {
        var step = Planes + (HasAlpha ? 1 : 0);
        for (var plane = 0; plane < rows.Length; plane++)
        {
            var values = rows[plane].AsSpan(start, Width);
            for (var column = 0; column < values.Length; column++)
            {
                var pixel = samples.Slice(column * step, step);
                values[column] = HasAlpha && pixel[^1] == 0 ? float.NaN : pixel[plane];
            }
        }
    }
}
