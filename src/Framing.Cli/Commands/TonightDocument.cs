using System.Globalization;
using System.Text.Json;
using Framing.Nights;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Writes what fits tonight as JSON.</summary>
internal static class TonightDocument
{
    public static void Write(Utf8JsonWriter writer, TonightAnswer answer)
    {
        var dark = answer.Dark;
        writer.WriteString(
            "date",
            dark.Night.Evening.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        writer.WriteString("words", dark.Night.Words);
        Number(writer, "sunBelowDeg", dark.SunBelow.Degrees, 0);
        Number(writer, "darkHours", dark.Length.TotalHours, 3);
        Stretches(writer, "dark", dark.Stretches);
        writer.WriteStartObject("moon");
        writer.WriteString("phase", answer.Phase.Words);
        Number(writer, "illuminatedFraction", answer.Phase.IlluminatedFraction, 4);
        Stretches(writer, "up", answer.MoonUp);
        writer.WriteEndObject();
        writer.WriteStartArray("objects");
        foreach (var thing in answer.Things)
        {
            Thing(writer, thing);
        }

        writer.WriteEndArray();
    }

    private static void Thing(Utf8JsonWriter writer, TonightThing thing)
    {
        writer.WriteStartObject();
        writer.WriteString("id", thing.Thing.Id);
        writer.WriteString("name", thing.Thing.Name);
        writer.WriteString("kind", ObjectWords.Kind(thing.Thing.Type));
        writer.WriteStartObject("centre");
        Number(writer, "raDeg", thing.Thing.MiddleOfExtent.RightAscension.Degrees, 6);
        Number(writer, "decDeg", thing.Thing.MiddleOfExtent.Declination.Degrees, 6);
        writer.WriteEndObject();
        writer.WriteStartArray("sizeArcmin");
        writer.WriteNumberValue(Math.Round(thing.Thing.Major!.Value.Arcminutes, 2));
        writer.WriteNumberValue(Math.Round(TonightJob.Minor(thing.Thing).Arcminutes, 2));
        writer.WriteEndArray();
        writer.WriteNumber("columns", thing.Fit.Columns);
        writer.WriteNumber("rows", thing.Fit.Rows);
        Number(writer, "fills", thing.Fit.Fills, 3);
        Number(writer, "darkHours", thing.Reach.Length.TotalHours, 3);
        Number(writer, "highestAltitudeDeg", thing.Reach.Highest.Altitude.Degrees, 3);
        writer.WriteString("highestAt", Time(thing.Reach.Best));
        Number(writer, "moonSeparationDeg", thing.FromMoon.Degrees, 2);
        Stretches(writer, "clear", thing.Reach.Stretches);
        writer.WriteEndObject();
    }

    private static void Stretches(
        Utf8JsonWriter writer,
        string name,
        IReadOnlyList<UtcInterval> stretches
    )
    {
        writer.WriteStartArray(name);
        foreach (var stretch in stretches)
        {
            writer.WriteStartObject();
            writer.WriteString("from", Time(stretch.Start));
            writer.WriteString("to", Time(stretch.End));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static string Time(DateTime utc) =>
        utc.AddMilliseconds(500.0)
            .ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    private static void Number(Utf8JsonWriter writer, string name, double value, int digits) =>
        writer.WriteNumber(name, Math.Round(value, digits, MidpointRounding.AwayFromZero) + 0.0);
}
