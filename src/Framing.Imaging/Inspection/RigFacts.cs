using Framing.Fits;

namespace Framing.Imaging;

/// <summary>What a header says of how a frame was taken. The keywords are common practice of cameras, not of the standard.</summary>
public sealed record RigFacts
{
    /// <summary>Nothing known.</summary>
    public static RigFacts None { get; } = new();

    /// <summary>The object's name (OBJECT).</summary>
    public string? Object { get; init; }

    /// <summary>Light, flat, dark, bias: as the file writes it (IMAGETYP, FRAME).</summary>
    public string? Kind { get; init; }

    /// <summary>The start of the exposure, UTC (DATE-OBS).</summary>
    public DateTimeOffset? Start { get; init; }

    /// <summary>Exposure in seconds, 0 or more (EXPTIME, EXPOSURE).</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>The middle of the exposure, UTC.</summary>
    public DateTimeOffset? Middle =>
        Start is { } start && ExposureSeconds is { } seconds
            ? start.AddSeconds(seconds / 2.0)
            : null;

    /// <summary>The filter's name (FILTER).</summary>
    public string? Filter { get; init; }

    /// <summary>The camera (INSTRUME).</summary>
    public string? Instrument { get; init; }

    /// <summary>The lens or telescope (TELESCOP).</summary>
    public string? Telescope { get; init; }

    /// <summary>Focal length in mm, more than 0 (FOCALLEN).</summary>
    public double? FocalLengthMillimetres { get; init; }

    /// <summary>Pixel size in micrometres as the file writes it, more than 0 (XPIXSZ, PIXSIZE1); most cameras count binning in.</summary>
    public double? PixelMicrometres { get; init; }

    /// <summary>Pixels joined along each axis (XBINNING).</summary>
    public int? Binning { get; init; }

    /// <summary>Sensor temperature in degrees Celsius (CCD-TEMP).</summary>
    public double? SensorCelsius { get; init; }

    /// <summary>Reads the facts of a header.</summary>
    /// <param name="header">The header.</param>
    /// <param name="warnings">Takes what is there but cannot be read.</param>
    /// <returns>The facts.</returns>
    public static RigFacts Read(FitsHeader header, ICollection<string> warnings)
    {
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(warnings);
        return new()
        {
            Object = Text(header, "OBJECT"),
            Kind = Text(header, "IMAGETYP") ?? Text(header, "FRAME"),
            Start = ObservationTime.Start(header, warnings),
            ExposureSeconds = Number(header, 0.0, 1e6, warnings, "EXPTIME", "EXPOSURE"),
            Filter = Text(header, "FILTER"),
            Instrument = Text(header, "INSTRUME"),
            Telescope = Text(header, "TELESCOP"),
            FocalLengthMillimetres = Number(header, 1e-3, 1e6, warnings, "FOCALLEN"),
            PixelMicrometres = Number(header, 1e-3, 1e4, warnings, "XPIXSZ", "PIXSIZE1"),
            Binning = (int?)Number(header, 1.0, 64.0, warnings, "XBINNING"),
            SensorCelsius = Number(header, -273.15, 200.0, warnings, "CCD-TEMP"),
        };
    }

    private static string? Text(FitsHeader header, string keyword) =>
        header.Text(keyword)?.Trim() is { Length: > 0 } text ? text : null;

    /// <summary>The first keyword that holds a number in the range. Zero where it makes no sense means "not known" to cameras.</summary>
    private static double? Number(
        FitsHeader header,
        double least,
        double most,
        ICollection<string> warnings,
        params ReadOnlySpan<string> keywords
    )
    {
        foreach (var keyword in keywords)
        {
            if (header.Number(keyword) is not { } number)
            {
                continue;
            }

            if (number >= least && number <= most)
            {
                return number;
            }

            if (number != 0.0)
            {
                warnings.Add(
                    FormattableString.Invariant(
                        $"{keyword} = {number}: not between {least} and {most}, so it is left out."
                    )
                );
            }
        }

        return null;
    }
}
