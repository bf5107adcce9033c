using Framing.Planning;

namespace Framing.Export;

/// <summary>Writes what a key turned out to do as one JSON document.</summary>
public static class KeyWriter
{
    /// <summary>Writes the document.</summary>
    /// <param name="result">The finding, or why there is none.</param>
    /// <returns>The document, ending in a line feed.</returns>
    public static string Write(KeyResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return JsonDocumentText.Write(json =>
            {
                if (result.Finding is not { } finding)
                {
                    json.WriteString("reason", result.Refusal);
                    return;
                }

                json.WriteString("pressed", CheckWords.Towards(finding.Press.Towards));
                json.WriteNumber("seconds", finding.Press.Seconds);
                json.WriteString("towards", CheckWords.Towards(finding.Went));
                json.WriteBoolean("crossed", finding.IsCrossed);
                json.WriteString("speed", finding.Speed.Label);
                json.WriteNumber("axisTurnedArcmin", ReportNumbers.Fine(finding.Turned.Arcminutes));
                json.WriteNumber("asideArcmin", ReportNumbers.Fine(finding.Aside.Arcminutes));
                json.WriteNumber("xSidereal", ReportNumbers.Fine(finding.TimesSidereal));
                json.WriteNumber("rateFactor", ReportNumbers.Fine(finding.RateFactor));
                if (finding.Backlash is { } play)
                {
                    json.WriteNumber("backlashArcmin", ReportNumbers.Fine(play.Arcminutes));
                }
                else
                {
                    json.WriteNull("backlashArcmin");
                }
            }) + "\n";
    }
}
