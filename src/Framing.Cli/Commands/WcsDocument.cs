using System.Globalization;
using System.Text.Json;
using Framing.Fits;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>The member "wcs": where a picture lies on the sky.</summary>
internal static class WcsDocument
{
    public static void Write(
        Utf8JsonWriter json,
        SkyFacts place,
        string? projection,
        DistortionKind distortion,
        bool distortionUsed,
        FrameOfReference frame,
        string? solutionFile
    )
    {
        json.WriteStartObject("wcs");
        json.WriteStartObject("centre");
        json.WriteNumber("raDeg", Fine(place.Centre.RightAscension.Degrees));
        json.WriteNumber("decDeg", Fine(place.Centre.Declination.Degrees));
        json.WriteEndObject();
        json.WriteStartArray("scaleArcsecPerPx");
        json.WriteNumberValue(Fine(place.ScaleX.Arcseconds));
        json.WriteNumberValue(Fine(place.ScaleY.Arcseconds));
        json.WriteEndArray();
        json.WriteNumber("positionAngleDeg", Fine(place.PositionAngle.Degrees));
        json.WriteBoolean("mirrored", place.Mirrored);
        json.WriteNumber("displayedPositionAngleDeg", Fine(place.DisplayedPositionAngle.Degrees));
        json.WriteBoolean("displayedMirrored", place.DisplayedMirrored);
        json.WriteStartArray("cornersDeg");
        foreach (var corner in place.Corners)
        {
            json.WriteStartArray();
            json.WriteNumberValue(Fine(corner.RightAscension.Degrees));
            json.WriteNumberValue(Fine(corner.Declination.Degrees));
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteString("projection", projection);
        json.WriteString(
            "distortion",
            distortion == DistortionKind.None
                ? "none"
                : distortion.ToString().ToUpper(CultureInfo.InvariantCulture)
        );
        json.WriteBoolean("distortionUsed", distortionUsed);
        json.WriteString("frameAsWritten", frame.ToString());
        json.WriteString("solutionFile", solutionFile);
        json.WriteEndObject();
    }

    /// <summary>A number to nine decimals, never minus nothing.</summary>
    public static double Fine(double value)
    {
        var rounded = Math.Round(value, 9, MidpointRounding.AwayFromZero);
        return rounded == 0.0 ? 0.0 : rounded;
    }
}
