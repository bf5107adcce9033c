using System.Text.Json;
using Framing.Fits;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>What <c>solve --json</c> prints.</summary>
internal static class SolveDocument
{
    public static void Write(
        Utf8JsonWriter json,
        SolveResult result,
        string? written,
        double seconds
    )
    {
        json.WriteBoolean("solved", result.Solution is not null);
        if (result is { Solution: { } solution, Sky: { } place })
        {
            WcsDocument.Write(
                json,
                place,
                solution.Fit.Coordinates.Projection,
                solution.Fit.Distortion is null ? DistortionKind.None : DistortionKind.Sip,
                solution.Fit.Distortion is not null,
                FrameOfReference.Icrs,
                written == result.Facts.Name ? null : written
            );
        }
        else
        {
            json.WriteNull("wcs");
        }

        var fit = result.Solution?.Fit;
        json.WriteNumber("starsFound", result.Found.Stars.Count);
        json.WriteNumber("starsMatched", fit?.Used.Count ?? 0);
        Number(json, "rmsArcsec", fit?.Rms.Arcseconds);
        Number(json, "rmsPx", fit?.RmsPixels);
        if (result.Solution is { } found)
        {
            json.WriteNumber("falseMatchProbability", found.FalseMatchProbability);
        }
        else
        {
            json.WriteNull("falseMatchProbability");
        }

        Number(json, "focalLengthMm", result.FocalLengthMillimetres);
        json.WriteStartObject("sigma");
        Number(json, "centreArcsec", fit?.Precision.Centre.Arcseconds);
        Number(json, "positionAngleDeg", fit?.Precision.Angle.Degrees);
        Number(json, "scaleRelative", fit?.Precision.RelativeScale);
        json.WriteEndObject();
        json.WriteString("whyNot", result.WhyNot);
        json.WriteString("written", written);
        json.WriteStartArray("warnings");
        foreach (var message in result.Messages)
        {
            json.WriteStringValue(message);
        }

        json.WriteEndArray();
        json.WriteNumber("seconds", Math.Round(seconds, 3));
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
