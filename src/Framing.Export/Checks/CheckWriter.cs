using System.Text.Json;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>Writes checks of test frames as one JSON document.</summary>
/// <remarks>
/// <c>turnCameraDeg</c> is planned minus measured, plus for counter-clockwise as seen from behind the camera;
/// <c>moveNeeded</c> is what the telescope must do, on the sky; a move's <c>towards</c> is where the telescope then points.
/// </remarks>
public static class CheckWriter
{
    /// <summary>Writes the document.</summary>
    /// <param name="frames">The frames with their checks.</param>
    /// <returns>The document, ending in a line feed.</returns>
    public static string Write(IReadOnlyList<CheckedFrame> frames)
    {
        ArgumentNullException.ThrowIfNull(frames);
        return JsonDocumentText.Write(json =>
            {
                json.WriteStartArray("frames");
                foreach (var frame in frames)
                {
                    Frame(json, frame);
                }

                json.WriteEndArray();
                MeanCentre(json, frames);
            }) + "\n";
    }

    /// <summary>Of several frames the mean of their middles: of unit vectors, so that 0h and the poles are places like any other.</summary>
    private static void MeanCentre(Utf8JsonWriter json, IReadOnlyList<CheckedFrame> frames)
    {
        var sum = default(Vector3D);
        var count = 0;
        foreach (var frame in frames)
        {
            if (frame.Check is { } check)
            {
                sum += check.Frame.Pose.Centre.Vector;
                count++;
            }
        }

        if (count > 1 && sum.Length > 1e-9)
        {
            json.WriteStartObject("meanCentre");
            Direction(json, SkyDirection.FromVector(sum));
            json.WriteEndObject();
        }
    }

    private static void Direction(Utf8JsonWriter json, SkyDirection direction)
    {
        json.WriteNumber("raDeg", ReportNumbers.Turn(direction.RightAscension.Degrees));
        json.WriteNumber("decDeg", ReportNumbers.Degrees(direction.Declination.Degrees));
    }

    private static void Frame(Utf8JsonWriter json, CheckedFrame frame)
    {
        json.WriteStartObject();
        json.WriteString("file", frame.File);
        json.WriteBoolean("solved", frame.Check is not null);
        if (frame.Reason is not null)
        {
            json.WriteString("reason", frame.Reason);
        }

        if (frame.Check is { } check)
        {
            Check(json, check);
        }

        if (frame.Scale is { } scale)
        {
            json.WriteNumber("scaleArcsecPerPx", ReportNumbers.Fine(scale.Arcseconds));
        }

        if (frame.FocalLengthMillimetres is { } focalLength)
        {
            json.WriteNumber("focalLengthMm", Math.Round(focalLength, 2));
        }

        json.WriteStartArray("cautions");
        foreach (
            var text in frame.Check is { } known ? known.Warnings.Concat(frame.Notes) : frame.Notes
        )
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Check(Utf8JsonWriter json, FrameCheck check)
    {
        json.WriteNumber("panel", check.Panel.Number);
        json.WriteString("verdict", CheckWords.Verdict(check.Verdict));
        json.WriteStartArray("steps");
        foreach (var step in check.Steps)
        {
            json.WriteStringValue(CheckWords.Step(step));
        }

        json.WriteEndArray();
        json.WriteStartObject("centre");
        Direction(json, check.Frame.Pose.Centre);
        json.WriteEndObject();
        json.WriteNumber(
            "positionAngleDeg",
            ReportNumbers.Turn(check.Frame.Pose.PositionAngle.Degrees)
        );
        json.WriteStartArray("fieldDeg");
        json.WriteNumberValue(ReportNumbers.Degrees(check.Frame.Field.Width.Degrees));
        json.WriteNumberValue(ReportNumbers.Degrees(check.Frame.Field.Height.Degrees));
        json.WriteEndArray();
        json.WriteNumber("turnCameraDeg", ReportNumbers.Fine(check.TurnCamera.Degrees));
        json.WriteStartObject("moveNeeded");
        json.WriteNumber("eastArcmin", ReportNumbers.Fine(check.EastNeeded.Arcminutes));
        json.WriteNumber("northArcmin", ReportNumbers.Fine(check.NorthNeeded.Arcminutes));
        json.WriteNumber("totalArcmin", ReportNumbers.Fine(check.TotalNeeded.Arcminutes));
        json.WriteNumber(
            "towardsPositionAngleDeg",
            ReportNumbers.Turn(check.Frame.Pose.Centre.PositionAngleTo(check.Panel.Centre).Degrees)
        );
        json.WriteNumber("raAxisArcmin", ReportNumbers.Fine(check.RightAscensionNeeded.Arcminutes));
        json.WriteNumber("decAxisArcmin", ReportNumbers.Fine(check.DeclinationNeeded.Arcminutes));
        json.WriteEndObject();
        json.WriteStartArray("moves");
        for (var i = 0; i < check.Moves.Count; i++)
        {
            var hold = check.Moves[i];
            json.WriteStartObject();
            json.WriteString("towards", CheckWords.Towards(hold.Towards));
            json.WriteString("key", hold.Key);
            json.WriteString("speed", hold.Speed.Label);
            json.WriteNumber("xSidereal", hold.Speed.Sidereal);
            json.WriteNumber("seconds", Math.Round(hold.Seconds, 2));
            json.WriteString("starsMove", CheckWords.Way(check.MotionOfMoves[i]));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("retype");
        json.WriteString("ra", check.RetypeRa);
        json.WriteString("dec", check.RetypeDec);
        json.WriteEndObject();
        json.WriteStartObject("learnedOffset");
        json.WriteNumber(
            "raArcmin",
            ReportNumbers.Fine(check.LearnedOffset.RightAscension.Arcminutes)
        );
        json.WriteNumber(
            "decArcmin",
            ReportNumbers.Fine(check.LearnedOffset.Declination.Arcminutes)
        );
        json.WriteEndObject();
        json.WriteBoolean("displayedMirrored", check.Frame.Mirrored);
        json.WriteString("starsMustMove", CheckWords.Motion(check.StarsMustMove));
        if (check.Dial is { } dial)
        {
            json.WriteNumber("dialDeg", ReportNumbers.Turn(dial.Degrees));
        }

        json.WriteNumber("coveredFraction", ReportNumbers.Fine(check.CoveredFraction));
        json.WriteStartObject("tolerance");
        json.WriteNumber("placeArcmin", ReportNumbers.Fine(check.Tolerance.Place.Arcminutes));
        json.WriteNumber("turnDeg", ReportNumbers.Fine(check.Tolerance.Turn.Degrees));
        json.WriteEndObject();
    }
}
