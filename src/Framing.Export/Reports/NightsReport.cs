using System.Globalization;
using System.Text.Json;
using Framing.Nights;

namespace Framing.Export;

/// <summary>Writes nights into the report: <c>nights</c>, and how good the plan is: <c>schedule</c>.</summary>
internal static class NightsReport
{
    public static void Write(Utf8JsonWriter json, PlannedNights plan)
    {
        json.WriteStartArray("nights");
        foreach (var night in plan.Nights)
        {
            Night(json, night, plan.Request.Clock);
        }

        json.WriteEndArray();
        if (plan.Request.Filters.Count > 0)
        {
            Schedule(json, plan);
        }
    }

    private static void Night(Utf8JsonWriter json, PlannedNight night, SiteClock clock)
    {
        json.WriteStartObject();
        json.WriteString(
            "date",
            night.Sun.Evening.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        json.WriteString("darkness", NameOf(night.Darkness));
        Time(json, "darkFrom", night.Dark.Count > 0 ? night.Dark[0].Start : null);
        Time(json, "darkTo", night.Dark.Count > 0 ? night.Dark[^1].End : null);
        json.WriteString("words", night.Sun.Words);
        json.WriteStartArray("clockChanges");
        foreach (var change in clock.Changes(night.Sun.Start, night.Sun.End))
        {
            json.WriteStartObject();
            json.WriteString("at", UtcText.Of(change.Utc));
            json.WriteString("words", change.Words);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("moon");
        json.WriteNumber("illuminatedFraction", ReportNumbers.Fine(night.Moon.IlluminatedFraction));
        json.WriteNumber("separationDeg", ReportNumbers.Fine(night.Moon.Separation.Degrees));
        Stretches(json, "up", night.Moon.Up);
        json.WriteEndObject();
        json.WriteStartArray("reach");
        for (var i = 0; i < night.Reachable.Count; i++)
        {
            json.WriteStartObject();
            json.WriteNumber("panel", i + 1);
            Stretches(json, "windows", night.Reachable[i]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("blocks");
        foreach (var block in night.Blocks)
        {
            Block(json, block, clock);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Block(Utf8JsonWriter json, NightBlock block, SiteClock clock)
    {
        json.WriteStartObject();
        json.WriteNumber("panel", block.Panel);
        json.WriteString("filter", block.Filter.Name);
        json.WriteString("from", UtcText.Of(block.From));
        json.WriteString("to", UtcText.Of(block.To));
        json.WriteString("fromLocal", clock.At(block.From).IsoText);
        json.WriteString("toLocal", clock.At(block.To).IsoText);
        json.WriteNumber("subsToShoot", block.SubsToShoot);
        json.WriteNumber("subsExpectedGood", block.SubsExpectedGood);
        json.WriteStartArray("altitudeDeg");
        json.WriteNumberValue(Math.Round(block.Lowest.Degrees, 2));
        json.WriteNumberValue(Math.Round(block.Highest.Degrees, 2));
        json.WriteEndArray();
        json.WriteNumber("airmass", Math.Round(block.MeanAirmass, 3));
        json.WriteEndObject();
    }

    private static void Schedule(Utf8JsonWriter json, PlannedNights plan)
    {
        json.WriteStartObject("schedule");
        json.WriteNumber("leastFraction", ReportNumbers.Fine(plan.LeastFraction));
        json.WriteNumber("leastFractionAtMost", ReportNumbers.Fine(plan.LeastFractionBound));
        json.WriteNumber("subs", plan.Subs);
        json.WriteNumber("subsAtMost", plan.SubsBound);
        json.WriteNumber("gap", ReportNumbers.Fine(plan.Gap));
        json.WriteBoolean("best", plan.IsBest);
        json.WriteStartArray("panels");
        foreach (var tally in plan.Tallies)
        {
            json.WriteStartObject();
            json.WriteNumber("panel", tally.Panel);
            json.WriteString("filter", tally.Filter.Name);
            json.WriteNumber("subsWanted", tally.SubsWanted);
            json.WriteNumber("subsPlanned", tally.SubsPlanned);
            json.WriteNumber("shortMin", ReportNumbers.Fine(tally.Short.TotalMinutes));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string NameOf(DarknessWanted darkness) =>
        darkness switch
        {
            DarknessWanted.Civil => "civil",
            DarknessWanted.Nautical => "nautical",
            _ => "astronomical",
        };

    private static void Stretches(
        Utf8JsonWriter json,
        string name,
        IReadOnlyList<UtcInterval> stretches
    )
    {
        json.WriteStartArray(name);
        foreach (var stretch in stretches)
        {
            json.WriteStartArray();
            json.WriteStringValue(UtcText.Of(stretch.Start));
            json.WriteStringValue(UtcText.Of(stretch.End));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Time(Utf8JsonWriter json, string name, DateTime? utc)
    {
        if (utc is { } time)
        {
            json.WriteString(name, UtcText.Of(time));
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
