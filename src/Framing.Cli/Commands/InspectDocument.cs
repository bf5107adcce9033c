using System.Globalization;
using System.Text.Json;
using Framing.Fits;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>What <c>inspect --json</c> prints.</summary>
internal static class InspectDocument
{
    public static void Write(
        Utf8JsonWriter json,
        PictureFacts facts,
        PixelAnswer? pixel,
        SkyAnswer? sky
    )
    {
        json.WriteStartArray("size");
        json.WriteNumberValue(facts.Width);
        json.WriteNumberValue(facts.Height);
        json.WriteEndArray();
        json.WriteString("format", facts.Format.ToString().ToUpperInvariant());
        json.WriteString("packing", facts.Packing);
        json.WriteNumber("planes", facts.Planes);
        json.WriteBoolean("transparency", facts.HasAlpha);
        json.WriteString("sampleFormat", facts.SampleFormatName);
        json.WriteBoolean("rowsTopDown", facts.RowsTopDown);
        Rig(json, facts.Rig);
        if (facts.Sky is { } place)
        {
            WcsDocument.Write(
                json,
                place,
                facts.Solution.Projection,
                facts.Solution.Distortion,
                facts.Solution.DistortionUsed,
                facts.Solution.Frame,
                facts.SolutionFile
            );
        }
        else
        {
            json.WriteNull("wcs");
        }

        if (pixel is not null)
        {
            json.WriteStartObject("pixel");
            json.WriteNumber("x", pixel.Pixel.X);
            json.WriteNumber("y", pixel.Pixel.Y);
            Direction(json, pixel.Direction);
            json.WriteEndObject();
            Values(json, pixel.Values);
        }

        if (sky is not null)
        {
            json.WriteStartObject("sky");
            Direction(json, sky.Direction);
            Number(json, "x", sky.Pixel?.X);
            Number(json, "y", sky.Pixel?.Y);
            json.WriteBoolean("inside", sky.Inside);
            json.WriteString(
                "failure",
                sky.Failure switch
                {
                    MapFailure.None => null,
                    MapFailure.BehindThePlane => "behind-the-plane",
                    MapFailure.NotConverged => "not-converged",
                    _ => "off-the-map",
                }
            );
            json.WriteEndObject();
        }

        json.WriteStartArray("warnings");
        foreach (var warning in facts.Warnings)
        {
            json.WriteStringValue(warning);
        }

        json.WriteEndArray();
    }

    private static void Rig(Utf8JsonWriter json, RigFacts rig)
    {
        json.WriteStartObject("frame");
        json.WriteString("object", rig.Object);
        json.WriteString("kind", rig.Kind);
        json.WriteString("startUtc", Utc(rig.Start));
        json.WriteString("middleUtc", Utc(rig.Middle));
        Number(json, "exposureS", rig.ExposureSeconds);
        json.WriteString("filter", rig.Filter);
        json.WriteString("instrument", rig.Instrument);
        json.WriteString("telescope", rig.Telescope);
        Number(json, "focalLengthMm", rig.FocalLengthMillimetres);
        Number(json, "pixelUm", rig.PixelMicrometres);
        Number(json, "binning", rig.Binning);
        Number(json, "sensorC", rig.SensorCelsius);
        json.WriteEndObject();
    }

    private static string? Utc(DateTimeOffset? time) =>
        time?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    private static void Values(Utf8JsonWriter json, IReadOnlyList<double?> values)
    {
        json.WriteStartArray("value");
        foreach (var value in values)
        {
            if (value is { } number && double.IsFinite(number))
            {
                json.WriteNumberValue(number);
            }
            else
            {
                json.WriteNullValue();
            }
        }

        json.WriteEndArray();
    }

    private static void Direction(Utf8JsonWriter json, SkyDirection? direction)
    {
        Number(json, "raDeg", direction?.RightAscension.Degrees);
        Number(json, "decDeg", direction?.Declination.Degrees);
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, WcsDocument.Fine(number));
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
