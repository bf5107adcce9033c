using System.Globalization;
using System.Text;
using System.Text.Json;
using Framing.Export;
using Framing.Rehearsal;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The truth about a made frame, as it stands beside it: pixels as FITS counts and as the file's axes run.</summary>
internal static class TruthDocument
{
    /// <summary>More stars than this would only make the file long.</summary>
    private const int MostStars = 1000;

    /// <summary>Writes it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="frame">The frame.</param>
    /// <param name="name">The name of the frame's file.</param>
    public static void Write(string path, RehearsedFrame frame, string name) =>
        OutputFile.Write(
            path,
            Encoding.UTF8.GetBytes(
                JsonDocumentText.Write(json => Members(json, frame, name)) + "\n"
            )
        );

    private static void Members(Utf8JsonWriter json, RehearsedFrame frame, string name)
    {
        var recipe = frame.Recipe;
        json.WriteString("schema", "framing-truth/1");
        json.WriteString("file", name);
        json.WriteString("kind", KindOf(recipe.Kind));
        json.WriteString("startedAt", Utc(recipe.Exposure.Start));
        json.WriteNumber("exposureS", recipe.Exposure.Seconds);
        json.WriteStartArray("size");
        json.WriteNumberValue(frame.Width);
        json.WriteNumberValue(frame.Height);
        json.WriteEndArray();
        json.WriteBoolean("rowsTopDown", recipe.Camera.RowsTopDown);
        json.WriteNumber("noise", frame.Noise);
        if (recipe.Kind != FrameKind.Light)
        {
            return;
        }

        Place(json, "centre", frame.Pose.Centre);
        json.WriteNumber("positionAngleDeg", frame.Pose.PositionAngle.Degrees);
        json.WriteBoolean("displayedMirrored", recipe.Lens.Mirrored);
        json.WriteNumber("focalLengthMm", recipe.Lens.FocalLengthMillimetres);
        json.WriteNumber("scaleArcsecPerPx", frame.Coordinates.Matrix.Scale.Arcseconds);
        Coordinates(json, frame.Coordinates);
        json.WriteStartArray("stars");
        foreach (var star in frame.Stars.Take(MostStars))
        {
            json.WriteStartObject();
            json.WriteNumber("x", Math.Round(star.Position.X, 4));
            json.WriteNumber("y", Math.Round(star.Position.Y, 4));
            json.WriteNumber("raDeg", Math.Round(star.Direction.RightAscension.Degrees, 7));
            json.WriteNumber("decDeg", Math.Round(star.Direction.Declination.Degrees, 7));
            json.WriteNumber("v", star.VMagnitude);
            json.WriteNumber("electrons", Math.Round(star.Electrons, 1));
            json.WriteBoolean("real", star.IsReal);
            json.WriteBoolean("saturated", star.IsSaturated);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The world coordinates by the names of FITS; distortion as SIP has it.</summary>
    private static void Coordinates(Utf8JsonWriter json, WorldCoordinates coordinates)
    {
        json.WriteStartObject("wcs");
        Pair(json, "crpix", coordinates.ReferencePixel.X, coordinates.ReferencePixel.Y);
        Pair(
            json,
            "crval",
            coordinates.ReferenceDirection.RightAscension.Degrees,
            coordinates.ReferenceDirection.Declination.Degrees
        );
        json.WriteStartArray("cd");
        var projected = coordinates as ProjectedWorldCoordinates;
        var matrix = projected?.PlaneMatrix ?? coordinates.Matrix;
        foreach (var number in (double[])[matrix.Cd11, matrix.Cd12, matrix.Cd21, matrix.Cd22])
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
        if (projected?.Sip is { } sip)
        {
            Polynomial(json, "a", sip.A);
            Polynomial(json, "b", sip.B);
        }

        json.WriteEndObject();
    }

    private static void Polynomial(Utf8JsonWriter json, string name, PixelPolynomial polynomial)
    {
        json.WriteStartObject(name);
        for (var p = 0; p <= polynomial.Order; p++)
        {
            for (var q = 0; q <= polynomial.Order - p; q++)
            {
                if (polynomial[p, q] != 0.0)
                {
                    json.WriteNumber(
                        string.Create(CultureInfo.InvariantCulture, $"{p}_{q}"),
                        polynomial[p, q]
                    );
                }
            }
        }

        json.WriteEndObject();
    }

    private static void Pair(Utf8JsonWriter json, string name, double x, double y)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(x);
        json.WriteNumberValue(y);
        json.WriteEndArray();
    }

    private static void Place(Utf8JsonWriter json, string name, SkyDirection direction)
    {
        json.WriteStartObject(name);
        json.WriteNumber("raDeg", direction.RightAscension.Degrees);
        json.WriteNumber("decDeg", direction.Declination.Degrees);
        json.WriteEndObject();
    }

    private static string KindOf(FrameKind kind) =>
        kind switch
        {
            FrameKind.Light => "light",
            FrameKind.Flat => "flat",
            FrameKind.Dark => "dark",
            _ => "bias",
        };

    private static string Utc(DateTime time) =>
        time.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
