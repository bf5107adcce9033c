using System.Globalization;
using System.Text;
using System.Text.Json;
using Framing.Export;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What the checks of an evening have taught, kept beside the plan: PLAN.evening.json.</summary>
/// <remarks>
/// Entries are known by the time of their frames: a frame that is checked again is judged by what was known before it, and
/// takes its own old place.
/// </remarks>
internal sealed class EveningLog
{
    private const string Schema = "framing-evening/1";

    /// <summary>What is older is another evening, and another setting up.</summary>
    private static readonly TimeSpan Evening = TimeSpan.FromHours(16.0);

    private readonly string path;
    private readonly List<EveningEntry> entries;

    private EveningLog(string path, List<EveningEntry> entries)
    {
        this.path = path;
        this.entries = entries;
    }

    /// <summary>Reads the log of a plan.</summary>
    /// <param name="planPath">The plan file.</param>
    /// <param name="messages">Takes what the user should know.</param>
    /// <returns>The log; empty where there is none yet.</returns>
    public static EveningLog Of(string planPath, List<string> messages)
    {
        var place = Path.ChangeExtension(planPath, null) + ".evening.json";
        if (!File.Exists(place))
        {
            return new(place, []);
        }

        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(place));
            var root = document.RootElement;
            if (root.GetProperty("schema").GetString() == Schema)
            {
                return new(place, [.. root.GetProperty("checks").EnumerateArray().Select(Entry)]);
            }
        }
        catch (Exception fault)
            when (fault
                    is JsonException
                        or KeyNotFoundException
                        or FormatException
                        or InvalidOperationException
                        or ArgumentException
                        or IOException
                        or UnauthorizedAccessException
            ) { }

        messages.Add($"{place}: what earlier checks had learned cannot be read; it is begun anew.");
        return new(place, []);
    }

    /// <summary>The last check before a frame, on the same evening; null when it is the first.</summary>
    public EveningEntry? Before(DateTime at) =>
        entries.Where(entry => entry.At < at && at - entry.At < Evening).MaxBy(entry => entry.At);

    /// <summary>The check of a frame of this time; null when there was none.</summary>
    public EveningEntry? At(DateTime at) => entries.Find(entry => entry.At == at);

    /// <summary>Puts a check into the log; what is older than the evening goes.</summary>
    public void Add(EveningEntry entry)
    {
        entries.RemoveAll(known => known.At == entry.At || entry.At - known.At >= Evening);
        entries.Add(entry);
        entries.Sort((one, other) => one.At.CompareTo(other.At));
    }

    /// <summary>Writes the log; where that is not possible the user is told what it means.</summary>
    public void Save(List<string> messages)
    {
        var text =
            JsonDocumentText.Write(json =>
            {
                json.WriteString("schema", Schema);
                json.WriteStartArray("checks");
                foreach (var entry in entries)
                {
                    json.WriteStartObject();
                    json.WriteString(
                        "at",
                        entry.At.ToString(
                            "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'",
                            CultureInfo.InvariantCulture
                        )
                    );
                    json.WriteNumber("panel", entry.Panel);
                    json.WriteString("step", entry.Step?.ToString());
                    Place(json, "typed", entry.Typed);
                    Place(json, "retype", entry.Retype);
                    json.WriteBoolean("movedByKeys", entry.MovedByKeys);
                    json.WriteStartObject("offset");
                    json.WriteNumber("raDeg", entry.Offset.RightAscension.Degrees);
                    json.WriteNumber("decDeg", entry.Offset.Declination.Degrees);
                    json.WriteEndObject();
                    Axis(json, "rightAscension", entry.RightAscension);
                    Axis(json, "declination", entry.Declination);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }) + "\n";
        try
        {
            OutputFile.Write(path, Encoding.UTF8.GetBytes(text));
        }
        catch (InputException fault)
        {
            messages.Add(
                $"{fault.Message}; the next check will not know what this one has learned."
            );
        }
    }

    private static void Place(Utf8JsonWriter json, string name, SkyDirection place)
    {
        json.WriteStartObject(name);
        json.WriteNumber("raDeg", place.RightAscension.Degrees);
        json.WriteNumber("decDeg", place.Declination.Degrees);
        json.WriteEndObject();
    }

    private static void Axis(Utf8JsonWriter json, string name, AxisHandling axis)
    {
        json.WriteStartObject(name);
        json.WriteString("finish", axis.Finish.ToString());
        json.WriteNumber("backlashArcmin", axis.Backlash.Arcminutes);
        json.WriteNumber("rateFactor", axis.RateFactor);
        json.WriteEndObject();
    }

    private static AxisHandling Axis(JsonElement axis) =>
        new(
            Enum.Parse<MountDirection>(axis.GetProperty("finish").GetString()!),
            Angle.FromArcminutes(axis.GetProperty("backlashArcmin").GetDouble()),
            axis.GetProperty("rateFactor").GetDouble()
        );

    private static EveningEntry Entry(JsonElement entry)
    {
        static SkyDirection Direction(JsonElement place) =>
            SkyDirection.FromDegrees(
                place.GetProperty("raDeg").GetDouble(),
                place.GetProperty("decDeg").GetDouble()
            );
        var offset = entry.GetProperty("offset");
        return new(
            DateTime.Parse(
                entry.GetProperty("at").GetString()!,
                CultureInfo.InvariantCulture,
                DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal
            ),
            entry.GetProperty("panel").GetInt32(),
            entry.GetProperty("step").GetString() is { } step ? Enum.Parse<CheckStep>(step) : null,
            Direction(entry.GetProperty("typed")),
            Direction(entry.GetProperty("retype")),
            entry.GetProperty("movedByKeys").GetBoolean(),
            new(
                Angle.FromDegrees(offset.GetProperty("raDeg").GetDouble()),
                Angle.FromDegrees(offset.GetProperty("decDeg").GetDouble())
            ),
            Axis(entry.GetProperty("rightAscension")),
            Axis(entry.GetProperty("declination"))
        );
    }
}
