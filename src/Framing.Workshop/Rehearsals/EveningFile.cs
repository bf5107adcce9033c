using System.Globalization;
using System.Text;
using System.Text.Json;
using Framing.Export;
using Framing.Rehearsal;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The file of a rehearsed evening: its hidden errors, how the mount stands, how many frames were taken.</summary>
/// <param name="Errors">The hidden errors.</param>
/// <param name="State">How the mount stands; null before it was first pointed.</param>
/// <param name="Frames">Frames taken so far.</param>
internal sealed record EveningFile(HiddenErrors Errors, MountState? State, int Frames)
{
    private const string Schema = "framing-rehearsal/1";

    /// <summary>Reads an evening.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The evening; null when there is no such file yet.</returns>
    /// <exception cref="InputException">It is there, but no evening.</exception>
    public static EveningFile? Read(string path)
    {
        if (Directory.Exists(path))
        {
            throw new InputException(
                $"{path}: a folder; give the file of the evening, such as {Path.Combine(path, "evening.json")}"
            );
        }

        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(path));
            return Of(document.RootElement);
        }
        catch (Exception fault)
            when (fault
                    is JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
                        or ArgumentException
            )
        {
            throw new InputException(
                $"{path}: not the file of a rehearsed evening; give another name, or delete it to begin a new evening",
                fault
            );
        }
    }

    /// <summary>Writes it.</summary>
    /// <param name="path">The file.</param>
    public void Write(string path) =>
        OutputFile.Write(path, Encoding.UTF8.GetBytes(JsonDocumentText.Write(Members) + "\n"));

    private static EveningFile Of(JsonElement root)
    {
        if (root.GetProperty("schema").GetString() != Schema)
        {
            throw new FormatException("another schema");
        }

        var hidden = root.GetProperty("hidden");
        var errors = new HiddenErrors
        {
            AxisTooHigh = Arcminutes(hidden, "axisTooHighArcmin"),
            AxisTooFarClockwise = Arcminutes(hidden, "axisTooFarClockwiseArcmin"),
            PointsTooFarEast = Arcminutes(hidden, "pointsTooFarEastArcmin"),
            PointsTooFarNorth = Arcminutes(hidden, "pointsTooFarNorthArcmin"),
            Scatter = Arcminutes(hidden, "scatterArcmin"),
            CameraAngle = PositionAngle.FromDegrees(Number(hidden, "cameraAngleDeg")),
            TurnSigma = Degrees(hidden, "turnSigmaDeg"),
            RightAscensionRate = Number(hidden, "rightAscensionRate"),
            DeclinationRate = Number(hidden, "declinationRate"),
            RightAscensionBacklash = Arcminutes(hidden, "rightAscensionBacklashArcmin"),
            DeclinationBacklash = Arcminutes(hidden, "declinationBacklashArcmin"),
            KeyAddsToTracking = hidden.GetProperty("keyAddsToTracking").GetBoolean(),
            FocalLengthFactor = Number(hidden, "focalLengthFactor"),
            Seed = hidden.GetProperty("seed").GetUInt64(),
        };
        if (
            errors.RightAscensionRate <= 0.0
            || errors.DeclinationRate <= 0.0
            || errors.FocalLengthFactor <= 0.0
            || errors.RightAscensionBacklash < Angle.Zero
            || errors.DeclinationBacklash < Angle.Zero
        )
        {
            throw new FormatException("a rate, a play or a focal length that cannot be");
        }

        var frames = root.GetProperty("frames").GetInt32();
        var mount = root.GetProperty("mount");
        return new(errors, mount.ValueKind == JsonValueKind.Null ? null : StateOf(mount), frames);
    }

    private static MountState StateOf(JsonElement mount) =>
        new()
        {
            Time = DateTime.SpecifyKind(
                DateTime.Parse(
                    mount.GetProperty("time").GetString() ?? "",
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal
                ),
                DateTimeKind.Utc
            ),
            RightAscension = Degrees(mount, "rightAscensionDeg"),
            Declination = Degrees(mount, "declinationDeg"),
            RightAscensionPlay = Arcminutes(mount, "rightAscensionPlayArcmin"),
            DeclinationPlay = Arcminutes(mount, "declinationPlayArcmin"),
            Turned = Degrees(mount, "turnedDeg"),
            Raised = Arcminutes(mount, "raisedArcmin"),
            Swung = Arcminutes(mount, "swungArcmin"),
            Moves = mount.GetProperty("moves").GetInt32(),
        };

    private static double Number(JsonElement element, string name) =>
        element.GetProperty(name).GetDouble();

    private static Angle Arcminutes(JsonElement element, string name) =>
        Angle.FromArcminutes(Number(element, name));

    private static Angle Degrees(JsonElement element, string name) =>
        Angle.FromDegrees(Number(element, name));

    private void Members(Utf8JsonWriter json)
    {
        json.WriteString("schema", Schema);
        json.WriteString(
            "about",
            "The hidden errors of a rehearsed evening: look only when you have found them yourself."
        );
        json.WriteNumber("frames", Frames);
        json.WriteStartObject("hidden");
        json.WriteNumber("axisTooHighArcmin", Errors.AxisTooHigh.Arcminutes);
        json.WriteNumber("axisTooFarClockwiseArcmin", Errors.AxisTooFarClockwise.Arcminutes);
        json.WriteNumber("pointsTooFarEastArcmin", Errors.PointsTooFarEast.Arcminutes);
        json.WriteNumber("pointsTooFarNorthArcmin", Errors.PointsTooFarNorth.Arcminutes);
        json.WriteNumber("scatterArcmin", Errors.Scatter.Arcminutes);
        json.WriteNumber("cameraAngleDeg", Errors.CameraAngle.Degrees);
        json.WriteNumber("turnSigmaDeg", Errors.TurnSigma.Degrees);
        json.WriteNumber("rightAscensionRate", Errors.RightAscensionRate);
        json.WriteNumber("declinationRate", Errors.DeclinationRate);
        json.WriteNumber("rightAscensionBacklashArcmin", Errors.RightAscensionBacklash.Arcminutes);
        json.WriteNumber("declinationBacklashArcmin", Errors.DeclinationBacklash.Arcminutes);
        json.WriteBoolean("keyAddsToTracking", Errors.KeyAddsToTracking);
        json.WriteNumber("focalLengthFactor", Errors.FocalLengthFactor);
        json.WriteNumber("seed", Errors.Seed);
        json.WriteEndObject();
        if (State is not { } state)
        {
            json.WriteNull("mount");
            return;
        }

        json.WriteStartObject("mount");
        json.WriteString("time", state.Time.ToString("O", CultureInfo.InvariantCulture));
        json.WriteNumber("rightAscensionDeg", state.RightAscension.Degrees);
        json.WriteNumber("declinationDeg", state.Declination.Degrees);
        json.WriteNumber("rightAscensionPlayArcmin", state.RightAscensionPlay.Arcminutes);
        json.WriteNumber("declinationPlayArcmin", state.DeclinationPlay.Arcminutes);
        json.WriteNumber("turnedDeg", state.Turned.Degrees);
        json.WriteNumber("raisedArcmin", state.Raised.Arcminutes);
        json.WriteNumber("swungArcmin", state.Swung.Arcminutes);
        json.WriteNumber("moves", state.Moves);
        json.WriteEndObject();
    }
}
