using System.Text.Json;
using Framing.Planning;

namespace Framing.Export;

/// <summary>Writes a tally as one JSON document.</summary>
public static class TallyWriter
{
    /// <summary>Writes the document.</summary>
    /// <param name="tally">The tally.</param>
    /// <returns>The document, ending in a line feed.</returns>
    public static string Write(PlanTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        return JsonDocumentText.Write(json =>
            {
                json.WriteStartArray("panels");
                foreach (var panel in tally.Panels)
                {
                    Panel(json, panel);
                }

                json.WriteEndArray();
                json.WriteStartArray("unmatched");
                foreach (var frame in tally.LeftOut)
                {
                    json.WriteStartObject();
                    json.WriteString("file", frame.File);
                    json.WriteString("reason", frame.Reason);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("calibration");
                foreach (var frame in tally.Calibration)
                {
                    json.WriteStartObject();
                    json.WriteString("file", frame.File);
                    json.WriteString("kind", TallyText.Kind(frame.Kind));
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteNumber(
                    "gapArcmin2",
                    ReportNumbers.Fine(tally.Cover.Missing.SquareArcminutes)
                );
                json.WriteNumber("doubles", tally.Doubles);
                json.WriteStartArray("next");
                foreach (var next in tally.Next)
                {
                    json.WriteStartObject();
                    json.WriteNumber("panel", next.Panel);
                    json.WriteString("filter", next.Filter);
                    json.WriteNumber("subS", ReportNumbers.Fine(next.SubSeconds));
                    json.WriteNumber("subsToShoot", next.Subs);
                    json.WriteNumber("missingS", ReportNumbers.Fine(next.MissingSeconds));
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("cautions");
                foreach (var warning in tally.Warnings)
                {
                    json.WriteStringValue(warning);
                }

                json.WriteEndArray();
            }) + "\n";
    }

    private static void Panel(Utf8JsonWriter json, PanelTally panel)
    {
        json.WriteStartObject();
        json.WriteNumber("number", panel.Panel.Number);
        json.WriteStartArray("byFilter");
        foreach (var entry in panel.ByFilter)
        {
            json.WriteStartObject();
            json.WriteString("filter", entry.Filter);
            json.WriteNumber("subS", ReportNumbers.Fine(entry.SubSeconds));
            json.WriteNumber("frames", entry.Frames);
            json.WriteNumber("rejected", entry.Rejected);
            json.WriteNumber("exposureS", ReportNumbers.Fine(entry.ExposureSeconds));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("coveredFraction", ReportNumbers.Fine(panel.CoveredFraction));
        json.WriteNumber("goalFraction", ReportNumbers.Fine(panel.GoalFraction));
        json.WriteEndObject();
    }
}
