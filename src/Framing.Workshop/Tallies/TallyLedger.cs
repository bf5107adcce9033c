using System.Globalization;
using System.Text;
using System.Text.Json;
using Framing.Export;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What is known of every frame that was looked at, kept beside the plan: PLAN.ledger.json.</summary>
/// <remarks>
/// It is written whole beside its place and renamed, so that it is the old or the new one at any moment; its entries stand
/// in the order of their paths, so that the same frames give the same ledger, in however many sittings.
/// </remarks>
internal sealed class TallyLedger
{
    private const string Schema = "framing-ledger/1";

    private readonly SortedDictionary<string, LedgerEntry> entries = new(StringComparer.Ordinal);

    private TallyLedger(string path) => Path = path;

    /// <summary>The ledger's own file.</summary>
    public string Path { get; }

    /// <summary>Every file, in the order of the paths.</summary>
    public IReadOnlyCollection<LedgerEntry> Entries => entries.Values;

    /// <summary>Opens the ledger of a plan.</summary>
    /// <param name="planPath">The plan file.</param>
    /// <param name="messages">Takes what the user should know.</param>
    /// <returns>The ledger; empty where there is none yet.</returns>
    public static TallyLedger Of(string planPath, List<string> messages)
    {
        var ledger = new TallyLedger(
            System.IO.Path.ChangeExtension(planPath, null) + ".ledger.json"
        );
        ledger.SweepUp();
        if (!File.Exists(ledger.Path))
        {
            return ledger;
        }

        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(ledger.Path));
            var root = document.RootElement;
            if (root.GetProperty("schema").GetString() == Schema)
            {
                foreach (var entry in root.GetProperty("files").EnumerateArray().Select(Entry))
                {
                    ledger.entries[entry.Path] = entry;
                }

                return ledger;
            }
        }
        catch (Exception fault)
            when (fault
                    is JsonException
                        or KeyNotFoundException
                        or FormatException
                        or InvalidOperationException
                        or ArgumentException
            )
        {
            ledger.entries.Clear();
        }

        messages.Add(
            $"{ledger.Path} cannot be read; it is made anew from the frames that are there."
        );
        return ledger;
    }

    /// <summary>What is known of a file that has not changed since; null when it has, or is new.</summary>
    public LedgerEntry? Unchanged(string path, long length, long writtenTicks) =>
        entries.TryGetValue(path, out var entry)
        && entry.Length == length
        && entry.WrittenTicks == writtenTicks
            ? entry
            : null;

    /// <summary>Puts a file into the ledger.</summary>
    public void Put(LedgerEntry entry) => entries[entry.Path] = entry;

    /// <summary>Forgets files of a folder that are not there any more: thrown away, they no longer count.</summary>
    /// <param name="folder">The whole path of the folder; what lies in other folders stays.</param>
    /// <param name="there">The files that are there.</param>
    /// <returns>How many were forgotten.</returns>
    public int KeepOnly(string folder, IReadOnlySet<string> there)
    {
        var inside = folder.TrimEnd('/') + "/";
        string[] gone =
        [
            .. entries.Keys.Where(path =>
                path.StartsWith(inside, StringComparison.Ordinal) && !there.Contains(path)
            ),
        ];
        foreach (var path in gone)
        {
            entries.Remove(path);
        }

        return gone.Length;
    }

    /// <summary>Writes the ledger.</summary>
    /// <exception cref="InputException">It cannot be written.</exception>
    public void Save() =>
        OutputFile.Write(
            Path,
            Encoding.UTF8.GetBytes(
                JsonDocumentText.Write(json =>
                {
                    json.WriteString("schema", Schema);
                    json.WriteStartArray("files");
                    foreach (var entry in entries.Values)
                    {
                        Write(json, entry);
                    }

                    json.WriteEndArray();
                }) + "\n"
            )
        );

    /// <summary>What a run that was killed while it wrote has left lying.</summary>
    private void SweepUp()
    {
        var name = System.IO.Path.GetFileName(Path);
        var start = $".{(name.Length > 40 ? name[..40] : name)}.";
        var folder = PlanPaths.Folder(Path) is { Length: > 0 } named ? named : ".";
        WriteFaults.Forgive(() =>
        {
            foreach (var part in Directory.EnumerateFiles(folder, start + "*.part"))
            {
                File.Delete(part);
            }
        });
    }

    private static void Write(Utf8JsonWriter json, LedgerEntry entry)
    {
        var frame = entry.Frame;
        json.WriteStartObject();
        json.WriteString("path", entry.Path);
        json.WriteNumber("length", entry.Length);
        json.WriteNumber("writtenTicks", entry.WrittenTicks);
        json.WriteString("key", frame.Key);
        json.WriteString("kind", frame.Kind.ToString());
        json.WriteString("fault", frame.Fault);
        json.WriteString(
            "at",
            frame.At?.ToString("yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'", CultureInfo.InvariantCulture)
        );
        Number(json, "exposureS", frame.ExposureSeconds);
        json.WriteString("filter", frame.Filter);
        Number(json, "raDeg", frame.Pose?.Centre.RightAscension.Degrees);
        Number(json, "decDeg", frame.Pose?.Centre.Declination.Degrees);
        Number(json, "positionAngleDeg", frame.Pose?.PositionAngle.Degrees);
        json.WriteNumber("tangentWidth", frame.Field.TangentWidth);
        json.WriteNumber("tangentHeight", frame.Field.TangentHeight);
        json.WriteBoolean("mirrored", frame.Mirrored);
        json.WriteNumber("stars", frame.Stars);
        json.WriteNumber("background", frame.Background);
        Number(json, "elongation", frame.Elongation);
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static LedgerEntry Entry(JsonElement entry)
    {
        double? Maybe(string name) =>
            entry.GetProperty(name) is { ValueKind: JsonValueKind.Number } value
                ? value.GetDouble()
                : null;
        var path = entry.GetProperty("path").GetString()!;
        return new(
            path,
            entry.GetProperty("length").GetInt64(),
            entry.GetProperty("writtenTicks").GetInt64(),
            new()
            {
                File = path,
                Key = entry.GetProperty("key").GetString()!,
                Kind = Enum.Parse<ShotKind>(entry.GetProperty("kind").GetString()!),
                Fault = entry.GetProperty("fault").GetString(),
                At = entry.GetProperty("at").GetString() is { } at
                    ? DateTime.Parse(
                        at,
                        CultureInfo.InvariantCulture,
                        DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal
                    )
                    : null,
                ExposureSeconds = Maybe("exposureS"),
                Filter = entry.GetProperty("filter").GetString(),
                Pose =
                    Maybe("raDeg") is { } ra && Maybe("decDeg") is { } dec
                        ? new CameraPose(
                            SkyDirection.FromDegrees(ra, dec),
                            PositionAngle.FromDegrees(Maybe("positionAngleDeg") ?? 0.0)
                        )
                        : null,
                Field = new(
                    entry.GetProperty("tangentWidth").GetDouble(),
                    entry.GetProperty("tangentHeight").GetDouble()
                ),
                Mirrored = entry.GetProperty("mirrored").GetBoolean(),
                Stars = entry.GetProperty("stars").GetInt32(),
                Background = entry.GetProperty("background").GetDouble(),
                Elongation = Maybe("elongation"),
            }
        );
    }
}
