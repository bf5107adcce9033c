using System.Text.Json;
using Framing.Mosaics;

namespace Framing.Export;

/// <summary>Writes what a mosaic covers, and how likely it is to do so, into the report.</summary>
internal static class CoverageReport
{
    public static void Write(Utf8JsonWriter json, MosaicCoverage? coverage, ClosingOdds? odds)
    {
        if (coverage is null && odds is null)
        {
            json.WriteNull("coverage");
            return;
        }

        json.WriteStartObject("coverage");
        if (coverage is not null)
        {
            Measured(json, coverage);
        }

        if (odds is not null)
        {
            Drawn(json, odds);
        }

        json.WriteEndObject();
    }

    private static void Measured(Utf8JsonWriter json, MosaicCoverage coverage)
    {
        json.WriteNumber(
            "targetCoveredFraction",
            ReportNumbers.Fine(coverage.TargetCoveredFraction)
        );
        json.WriteNumber("gapArcmin2", ReportNumbers.Fine(coverage.GapArea.SquareArcminutes));
        json.WriteNumber(
            "enclosedHolesArcmin2",
            ReportNumbers.Fine(coverage.EnclosedHoleArea.SquareArcminutes)
        );
        if (coverage.LeastOverlap is { } least)
        {
            json.WriteNumber("leastOverlapArcmin", ReportNumbers.Fine(least.Arcminutes));
        }
        else
        {
            json.WriteNull("leastOverlapArcmin");
        }

        json.WriteNumber("areaDeg2", ReportNumbers.Fine(coverage.Area.SquareDegrees));
    }

    private static void Drawn(Utf8JsonWriter json, ClosingOdds odds)
    {
        if (odds.ChanceTargetCovered is { } whole)
        {
            json.WriteNumber("chanceTargetCovered", whole);
        }

        json.WriteNumber("chanceNoGap", odds.ChanceNoGap);
        json.WriteNumber("trials", odds.Trials);
        json.WriteNumber(
            "expectedGapArcmin2",
            ReportNumbers.Fine(odds.ExpectedGapArea.SquareArcminutes)
        );
        if (odds.WeakestPair is not { } pair)
        {
            json.WriteNull("weakestPair");
            return;
        }

        json.WriteStartObject("weakestPair");
        json.WriteStartArray("panels");
        json.WriteNumberValue(pair.First);
        json.WriteNumberValue(pair.Second);
        json.WriteEndArray();
        json.WriteNumber("chanceOfGap", pair.Chance);
        json.WriteEndObject();
    }
}
