using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>One case with a file, put to <c>inspect</c>: counts the expectations that its answers hold, and fails on one that they do not.</summary>
internal sealed class InspectCase(Session session, string path, JsonElement expect)
{
    private readonly Dictionary<string, JsonElement> asked = new(StringComparer.Ordinal);

    /// <summary>How many of the case's expectations the command can answer and holds.</summary>
    public int Held()
    {
        if (expect.TryGetProperty("any_of", out var outcomes))
        {
            return Either(outcomes) ? 1 : throw new InvalidOperationException(path);
        }

        if (expect.TryGetProperty("refuse", out _))
        {
            Assert.True(IsRefused(expect), path);
            return 1;
        }

        return expect.EnumerateObject().Count(Holds);
    }

    private JsonElement Facts => Ask();

    private JsonElement Wcs => Facts.GetProperty("wcs");

    private bool Holds(JsonProperty item)
    {
        var value = item.Value;
        switch (item.Name)
        {
            case "sky_of_pixel":
                AssertPlace(value.GetProperty("ra_dec"), SkyAt(value.GetProperty("pixel")), 1.0);
                return true;
            case "pixel_of_sky":
                AssertPixel(value.GetProperty("pixel"), PixelAt(value.GetProperty("ra_dec")));
                return true;
            case "pixel_of_pole":
                AssertPixel(value, Ask("--sky", "0, 90").GetProperty("sky"));
                return true;
            case "pa_of_plus_y":
                AssertAngle(value.GetDouble(), Wcs.GetProperty("positionAngleDeg").GetDouble());
                return true;
            case "mirrored":
                Assert.Equal(value.GetBoolean(), Wcs.GetProperty("mirrored").GetBoolean());
                return true;
            case "outer_corners":
                foreach (var (corner, number) in value.EnumerateArray().Select((c, i) => (c, i)))
                {
                    AssertPlace(corner, Pair(Wcs.GetProperty("cornersDeg")[number]), 1.0);
                }

                return true;
            case "pixel_scale_deg":
                AssertScale(value.GetDouble() * 3600.0, 3600.0 * 1e-6);
                return true;
            case "scale_arcsec":
                AssertScale(value.GetDouble(), 1e-3);
                return true;
            case "icrs":
                AssertPlace(value, Pair(Wcs.GetProperty("centre"), "raDeg", "decDeg"), 3.0);
                return true;
            case "frame_as_written":
                Assert.Equal(value.GetString(), Wcs.GetProperty("frameAsWritten").GetString());
                return true;
            case "sky_solution":
                Assert.Equal(value.GetBoolean(), Wcs.ValueKind != JsonValueKind.Null);
                return true;
            case "names_any":
                Assert.True(Warns(value), path);
                return true;
            case "width" or "height":
                Assert.Equal(
                    value.GetInt32(),
                    Facts.GetProperty("size")[item.Name == "width" ? 0 : 1].GetInt32()
                );
                return true;
            case "colours":
                Assert.Equal(value.GetInt32(), Facts.GetProperty("planes").GetInt32());
                return true;
            case "object":
                Assert.Equal(
                    value.GetString(),
                    Facts.GetProperty("frame").GetProperty("object").GetString()
                );
                return true;
            case "sample":
                Assert.Equal(
                    value.GetProperty("value").GetDouble(),
                    Ask("--pixel", Text(value.GetProperty("pixel")))
                        .GetProperty("value")[0]
                        .GetDouble()
                );
                return true;
            case "fits_pixel":
                AssertPlace(expect.GetProperty("ra_dec"), SkyAt(value), 1.0);
                return true;
            case "start" or "middle":
                var key = item.Name == "start" ? "startUtc" : "middleUtc";
                Assert.Equal(
                    value.GetString() + "Z",
                    Facts.GetProperty("frame").GetProperty(key).GetString()
                );
                return true;
            case "inside" when value.ValueKind == JsonValueKind.Object:
                foreach (var place in value.EnumerateObject())
                {
                    AssertInside(place.Name, place.Value.GetBoolean());
                }

                return true;
            case var place when place.StartsWith("RA ", StringComparison.Ordinal):
                var seen = AssertInside(place, value.GetProperty("inside").GetBoolean());
                if (value.TryGetProperty("pixel", out var pixel))
                {
                    AssertPixel(pixel, seen);
                }

                return true;
            case "frame":
                Assert.StartsWith(
                    value.GetString()!,
                    Wcs.GetProperty("frameAsWritten").GetString(),
                    StringComparison.Ordinal
                );
                return true;
            case "defined_1_1":
                Assert.Equal(value.GetBoolean(), SampleAt("1,1") is not null);
                return true;
            case "value_10_7":
                Assert.Equal(value.GetDouble(), SampleAt("10,7")!.Value, 1e-3);
                return true;
            case "value":
                Assert.Equal(value.GetDouble(), SampleAt("7,31"));
                return true;
            case "values":
                Assert.Equal(
                    value.EnumerateArray().Select(sample => (double?)sample.GetDouble()),
                    Enumerable
                        .Range(1, value.GetArrayLength())
                        .Select(x => SampleAt(FormattableString.Invariant($"{x},1")))
                );
                return true;
            case "row0":
                foreach (var (sample, column) in value.EnumerateArray().Select((s, i) => (s, i)))
                {
                    AssertSamples(sample, column);
                }

                return true;
            default:
                return false;
        }
    }

    /// <summary>True when one of the outcomes that the case allows is what comes.</summary>
    private bool Either(JsonElement outcomes) =>
        outcomes
            .EnumerateArray()
            .Any(outcome =>
                outcome.TryGetProperty("refuse", out _) ? IsRefused(outcome)
                : outcome.TryGetProperty("terms", out var terms)
                    ? IsAt(outcome, "3,38")
                        && Warns(expect.GetProperty("names_any"))
                        && Wcs.GetProperty("distortionUsed").GetBoolean()
                            == (terms.GetString() == "used")
                : outcome.TryGetProperty("ra_dec", out _)
                    ? IsAt(outcome, "10,33") && Warns(outcome.GetProperty("names_any"))
                : outcome.TryGetProperty("quarters", out _)
                    ? Facts.GetProperty("size")[0].GetInt32()
                        == outcome.GetProperty("width").GetInt32()
                        && Facts.GetProperty("size")[1].GetInt32()
                            == outcome.GetProperty("height").GetInt32()
                : outcome.TryGetProperty("rgb", out var rgb)
                    && Ask("--pixel", "3,3")
                        .GetProperty("value")
                        .EnumerateArray()
                        .Select(v => v.GetDouble())
                        .SequenceEqual(rgb.EnumerateArray().Select(v => v.GetDouble()))
            );

    private bool IsAt(JsonElement outcome, string pixel)
    {
        var (ra, dec) = Pair(Ask("--pixel", pixel).GetProperty("pixel"), "raDeg", "decDeg");
        return Separation(outcome.GetProperty("ra_dec"), (ra, dec)) <= 1.0;
    }

    private bool IsRefused(JsonElement outcome)
    {
        var run = session.Run("inspect", path, "--json");
        return run.Code == 2
            && run.Output.Length == 0
            && run.Error.Count(letter => letter == '\n') == 1
            && NamesAny(outcome.GetProperty("names_any"), run.Error);
    }

    private bool Warns(JsonElement words) =>
        Facts
            .GetProperty("warnings")
            .EnumerateArray()
            .Any(warning => NamesAny(words, warning.GetString()!));

    private static bool NamesAny(JsonElement words, string text) =>
        words
            .EnumerateArray()
            .Any(word => text.Contains(word.GetString()!, StringComparison.OrdinalIgnoreCase));

    private JsonElement AssertInside(string place, bool inside)
    {
        var words = place.Split(' ');
        var sky = Ask("--sky", $"{words[1]}, {words[3]}").GetProperty("sky");
        Assert.Equal(inside, sky.GetProperty("inside").GetBoolean());
        return sky;
    }

    /// <summary>A PNG is counted from the bottom: its first row is the last y.</summary>
    private void AssertSamples(JsonElement sample, int column)
    {
        var place = FormattableString.Invariant(
            $"{column + 1},{Facts.GetProperty("size")[1].GetInt32()}"
        );
        var values = Ask("--pixel", place)
            .GetProperty("value")
            .EnumerateArray()
            .Select(v => v.GetDouble());
        Assert.Equal(
            sample.ValueKind == JsonValueKind.Array
                ? sample.EnumerateArray().Select(v => v.GetDouble())
                : [sample.GetDouble()],
            values
        );
    }

    private void AssertScale(double arcseconds, double tolerance)
    {
        var scale = Wcs.GetProperty("scaleArcsecPerPx");
        Assert.Equal(arcseconds, Math.Sqrt(scale[0].GetDouble() * scale[1].GetDouble()), tolerance);
    }

    private double? SampleAt(string pixel)
    {
        var value = Ask("--pixel", pixel).GetProperty("value")[0];
        return value.ValueKind == JsonValueKind.Null ? null : value.GetDouble();
    }

    private (double Ra, double Dec) SkyAt(JsonElement pixel) =>
        Pair(Ask("--pixel", Text(pixel)).GetProperty("pixel"), "raDeg", "decDeg");

    private JsonElement PixelAt(JsonElement place) => Ask("--sky", Text(place)).GetProperty("sky");

    /// <summary>Each question is asked once.</summary>
    private JsonElement Ask(params string[] options)
    {
        var question = string.Join(' ', options);
        if (!asked.TryGetValue(question, out var answer))
        {
            asked[question] = answer = session.Run(["inspect", path, .. options, "--json"]).Json();
        }

        return answer;
    }

    private static void AssertPixel(JsonElement expected, JsonElement sky)
    {
        Assert.Equal(expected[0].GetDouble(), sky.GetProperty("x").GetDouble(), 0.01);
        Assert.Equal(expected[1].GetDouble(), sky.GetProperty("y").GetDouble(), 0.01);
    }

    private static void AssertAngle(double expected, double angle) =>
        Assert.InRange(Math.Abs(Math.IEEERemainder(angle - expected, 360.0)), 0.0, 0.01);

    private static void AssertPlace(
        JsonElement expected,
        (double Ra, double Dec) place,
        double arcseconds
    ) => Assert.InRange(Separation(expected, place), 0.0, arcseconds);

    private static double Separation(JsonElement expected, (double Ra, double Dec) place) =>
        SkyDirection
            .FromDegrees(expected[0].GetDouble(), expected[1].GetDouble())
            .SeparationTo(SkyDirection.FromDegrees(place.Ra, place.Dec))
            .Arcseconds;

    private static (double Ra, double Dec) Pair(JsonElement pair) =>
        (pair[0].GetDouble(), pair[1].GetDouble());

    private static (double Ra, double Dec) Pair(JsonElement item, string ra, string dec) =>
        (item.GetProperty(ra).GetDouble(), item.GetProperty(dec).GetDouble());

    private static string Text(JsonElement pair) =>
        string.Create(CultureInfo.InvariantCulture, $"{pair[0].GetDouble()},{pair[1].GetDouble()}");
}
