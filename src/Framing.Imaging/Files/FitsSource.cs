using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>A picture in a FITS file.</summary>
internal sealed class FitsSource : PictureSource
{
    private readonly FitsFile file;
    private readonly FitsImage image;

    public FitsSource(FitsFile file)
        : base(file.Name)
    {
        this.file = file;
        try
        {
            image = file.RequireImage();
        }
        catch
        {
            file.Dispose();
            throw;
        }

        // ROWORDER is no keyword of the standard: a hint of how to show the picture, and never a change of its places.
        RowsTopDown = string.Equals(
            file.Header.Text("ROWORDER")?.Trim(),
            "TOP-DOWN",
            StringComparison.OrdinalIgnoreCase
        );
    }

    public override PictureFormat Format => PictureFormat.Fits;

    public override int Width => image.Width;

    public override int Height => image.Height;

    public override int Planes => image.Planes;

    public override SampleFormat SampleFormat => image.Scaling.Format;

    public override string? Packing => file.Packing;

    public override bool RowsTopDown { get; }

    public override FitsHeader Header => file.Header;

    public override IReadOnlyList<string> Warnings =>
        Planes is 1 or 3
            ? file.Warnings
            :
            [
                .. file.Warnings,
                FormattableString.Invariant(
                    $"NAXIS3 = {Planes}: 1 plane or 3 colours make a picture; the first plane is shown."
                ),
            ];

    public override Picture Read(int factor, WorldCoordinates? coordinates)
    {
        var size = new BlockAverage(Width, Height, factor);
        var planes = new float[ShownPlanes][];
        var rows = factor == 1 ? [] : new float[factor * Width];
        for (var plane = 0; plane < planes.Length; plane++)
        {
            var values = new float[size.Width * size.Height];
            if (factor == 1)
            {
                image.ReadRows(plane, 0, values);
            }
            else
            {
                for (var row = 0; row < size.Height; row++)
                {
                    image.ReadRows(plane, row * factor, rows);
                    size.Average(rows, values.AsSpan(row * size.Width, size.Width));
                }
            }

            planes[plane] = values;
        }

        return Make(size, factor, planes, coordinates);
    }

    public override IReadOnlyList<SampleValue> ReadSamples(int column, int row)
    {
        var samples = new SampleValue[Planes];
        for (var plane = 0; plane < samples.Length; plane++)
        {
            samples[plane] = image.ReadSample(plane, column, row);
        }

        return samples;
    }

    public override void Dispose() => file.Dispose();
}
