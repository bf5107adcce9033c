using System.Text;
using System.Text.Json;
using Framing.Mosaics;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>Writes a framing as <c>report.json</c> (schema <c>framing-report/1</c>).</summary>
/// <remarks>
/// Angles in decimal degrees, right ascension 0 to less than 360, ICRS J2000 unless a name says ofDate; times UTC, ISO 8601
/// with Z. The same framing gives the same bytes.
/// </remarks>
public static class ReportWriter
{
    /// <summary>The schema of the document.</summary>
    public const string Schema = "framing-report/1";

    private const double ArcminutesPerTangent = 60.0 * 180.0 / Math.PI;

    /// <summary>Writes the document.</summary>
    /// <param name="plan">The framing.</param>
    /// <param name="program">The program's name and version.</param>
    /// <param name="notes">The sums of the evening; null where there are none.</param>
    /// <param name="nights">The nights; null where none are planned.</param>
    /// <returns>UTF-8 bytes that end in a line feed.</returns>
    public static byte[] Write(
        FramedPlan plan,
        string program,
        EveningNotes? notes = null,
        PlannedNights? nights = null
    ) => Encoding.UTF8.GetBytes(WriteText(plan, program, notes, nights));

    /// <summary>Writes the document as text.</summary>
    /// <param name="plan">The framing.</param>
    /// <param name="program">The program's name and version.</param>
    /// <param name="notes">The sums of the evening; null where there are none.</param>
    /// <param name="nights">The nights; null where none are planned.</param>
    /// <returns>The document, ending in a line feed.</returns>
    public static string WriteText(
        FramedPlan plan,
        string program,
        EveningNotes? notes = null,
        PlannedNights? nights = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        return JsonDocumentText.Write(json =>
            {
                json.WriteString("schema", Schema);
                json.WriteString("title", plan.Request.Title);
                json.WriteString("program", program);
                Rig(json, plan.Request.Rig);
                Rotation(json, plan);
                Mosaic(json, plan);
                Panels(json, plan.Panels, plan.Turns);
                CoverageReport.Write(json, plan.Coverage, plan.Odds);
                if (nights is not null)
                {
                    NightsReport.Write(json, nights);
                }

                if (notes is not null)
                {
                    EveningReport.Write(json, notes, plan.Request);
                }

                Texts(
                    json,
                    "cautions",
                    [
                        .. plan.Warnings,
                        .. nights is null ? [] : NightWords.Warnings(nights),
                        .. notes?.Evening.Cautions ?? [],
                        .. notes?.Evening.Reminders ?? [],
                    ]
                );
                if ((plan.Impossible ?? NothingIn(nights)) is { } impossible)
                {
                    json.WriteString("impossible", impossible);
                }
            }) + "\n";
    }

    private static string? NothingIn(PlannedNights? nights) =>
        nights is null ? null : NightWords.Nothing(nights);

    private static void Rig(Utf8JsonWriter json, Rig rig)
    {
        json.WriteStartObject("rig");
        json.WriteNumber("scaleArcsecPerPx", ReportNumbers.Fine(rig.Scale.Arcseconds));
        json.WriteStartArray("fieldDeg");
        json.WriteNumberValue(ReportNumbers.Fine(rig.Field.Width.Degrees));
        json.WriteNumberValue(ReportNumbers.Fine(rig.Field.Height.Degrees));
        json.WriteEndArray();
        json.WriteNumber("focalLengthMm", rig.FocalLengthMillimetres);
        json.WriteStartArray("framePx");
        json.WriteNumberValue(rig.FrameWidthPx);
        json.WriteNumberValue(rig.FrameHeightPx);
        json.WriteEndArray();
        json.WriteBoolean("mirrored", rig.Mirrored);
        json.WriteEndObject();
    }

    private static void Rotation(Utf8JsonWriter json, FramedPlan plan)
    {
        var angle = plan.Pose.PositionAngle;
        json.WriteStartObject("rotation");
        json.WriteString("strategy", plan.Request.Rotation.Name);
        json.WriteNumber("positionAngleDeg", ReportNumbers.Turn(angle.Degrees));
        json.WriteNumber("alternativeDeg", ReportNumbers.Turn(angle.Opposite.Degrees));
        if (plan.CameraTurn is { } turn)
        {
            json.WriteNumber("turnCameraDeg", ReportNumbers.Fine(turn.Degrees));
        }

        json.WriteNumber(
            "marginArcmin",
            ReportNumbers.Fine(plan.TangentMargin * ArcminutesPerTangent)
        );
        json.WriteNumber(
            "marginWantedArcmin",
            ReportNumbers.Fine(plan.WantedTangentMargin * ArcminutesPerTangent)
        );
        json.WriteString("reason", plan.RotationReason);
        json.WriteEndObject();
    }

    private static void Mosaic(Utf8JsonWriter json, FramedPlan plan)
    {
        json.WriteStartObject("mosaic");
        json.WriteNumber("panelCount", plan.PanelCount);
        if (plan.IsRectangle)
        {
            json.WriteNumber("columns", plan.Columns);
            json.WriteNumber("rows", plan.Rows);
        }
        else
        {
            json.WriteNull("columns");
            json.WriteNull("rows");
        }

        json.WriteString("overlap", plan.Request.Overlap.Name);
        json.WriteStartArray("overlapArcmin");
        Arcminutes(json, plan.Overlap.AlongWidth, plan.Columns > 1);
        Arcminutes(json, plan.Overlap.AlongHeight, plan.Rows > 1);
        json.WriteEndArray();
        json.WriteString("reason", plan.OverlapReason);
        json.WriteBoolean("turnCameraAtEachPanel", plan.Request.TurnCameraAtEachPanel);
        Direction(json, "centre", plan.Pose.Centre);
        Route(json, plan.Route);
        Turns(json, plan.Turns);
        json.WriteEndObject();
    }

    private static void Route(Utf8JsonWriter json, ShootingRoute? route)
    {
        if (route is null)
        {
            return;
        }

        json.WriteStartArray("shootingOrder");
        foreach (var index in route.Order)
        {
            json.WriteNumberValue(index + 1);
        }

        json.WriteEndArray();
        json.WriteNumber("movesPastAndBack", route.PastAndBack);
    }

    private static void Turns(Utf8JsonWriter json, PanelTurns? turns)
    {
        if (turns is null)
        {
            return;
        }

        json.WriteStartObject("turning");
        json.WriteNumber("largestDeg", ReportNumbers.Fine(turns.Largest.Degrees));
        json.WriteStartArray("panels");
        json.WriteNumberValue(turns.MostLost.First);
        json.WriteNumberValue(turns.MostLost.Second);
        json.WriteEndArray();
        json.WriteNumber(
            "overlapLeftAloneArcmin",
            ReportNumbers.Fine(turns.OverlapLeftAlone.Arcminutes)
        );
        json.WriteNumber("overlapTurnedArcmin", ReportNumbers.Fine(turns.OverlapTurned.Arcminutes));
        json.WriteBoolean("worthIt", turns.IsWorthIt);
        json.WriteEndObject();
    }

    private static void Arcminutes(Utf8JsonWriter json, double tangent, bool hasNeighbour)
    {
        if (hasNeighbour)
        {
            json.WriteNumberValue(ReportNumbers.Fine(tangent * ArcminutesPerTangent));
        }
        else
        {
            json.WriteNullValue();
        }
    }

    private static void Panels(
        Utf8JsonWriter json,
        IReadOnlyList<PlannedPanel> panels,
        PanelTurns? turns
    )
    {
        json.WriteStartArray("panels");
        for (var i = 0; i < panels.Count; i++)
        {
            var panel = panels[i];
            json.WriteStartObject();
            json.WriteNumber("number", panel.Number);
            json.WriteNumber("column", panel.Column);
            json.WriteNumber("row", panel.Row);
            Direction(json, "centre", panel.Centre);
            json.WriteStartObject("ofDate");
            json.WriteNumber("raDeg", ReportNumbers.Turn(panel.OfDate.RightAscension.Degrees));
            json.WriteNumber("decDeg", ReportNumbers.Degrees(panel.OfDate.Declination.Degrees));
            json.WriteString("at", UtcText.Of(panel.At));
            json.WriteEndObject();
            json.WriteStartObject("entry");
            json.WriteString("ra", panel.EntryRa);
            json.WriteString("dec", panel.EntryDec);
            json.WriteEndObject();
            json.WriteNumber("positionAngleDeg", ReportNumbers.Turn(panel.PositionAngle.Degrees));
            json.WriteStartArray("cornersDeg");
            foreach (var corner in panel.Corners)
            {
                json.WriteStartArray();
                json.WriteNumberValue(ReportNumbers.Turn(corner.RightAscension.Degrees));
                json.WriteNumberValue(ReportNumbers.Degrees(corner.Declination.Degrees));
                json.WriteEndArray();
            }

            json.WriteEndArray();
            if (turns is not null)
            {
                json.WriteNumber("turnToGridDeg", ReportNumbers.Fine(turns.ToGrid[i].Degrees));
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static void Direction(Utf8JsonWriter json, string name, SkyDirection direction)
    {
        json.WriteStartObject(name);
        json.WriteNumber("raDeg", ReportNumbers.Turn(direction.RightAscension.Degrees));
        json.WriteNumber("decDeg", ReportNumbers.Degrees(direction.Declination.Degrees));
        json.WriteEndObject();
    }
}
