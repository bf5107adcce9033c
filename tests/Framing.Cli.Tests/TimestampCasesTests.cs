using System.Text;
using System.Text.Json;

namespace Framing.Cli.Tests;

/// <summary>When frames were taken: the cases of kind <c>timestamp</c> (FITS Standard 4.0, section 9.1.1), as inspect says it.</summary>
public sealed class TimestampCasesTests
{
    private const string Data = "tests/Framing.Fits.Tests/Data/cases/";

    private static readonly IReadOnlyDictionary<string, JsonElement> Cases = Read();

    [Fact]
    public void Cases_AreThree() => Assert.Equal(["F40", "F41", "F42"], Cases.Keys.Order());

    [Fact]
    public void Inspect_OfAFileWithAZone_GivesStartAndMiddle()
    {
        using var session = new Session();
        var file = Cases["F40"].GetProperty("file").GetString()!;
        var frame = Frame(session, Checkout.At(Data + file));
        var expect = Cases["F40"].GetProperty("expect");
        Near(expect.GetProperty("start").GetString()!, frame.GetProperty("startUtc"));
        Near(expect.GetProperty("middle").GetString()!, frame.GetProperty("middleUtc"));
    }

    [Fact]
    public void Inspect_OfEveryFormOfTheStandard_GivesTheStart()
    {
        using var session = new Session();
        var expect = Cases["F41"].GetProperty("expect").EnumerateObject().ToList();
        Assert.Equal(4, expect.Count);
        foreach (var form in expect)
        {
            var frame = Frame(session, Made(session, form.Name));
            Near(form.Value.GetString()!, frame.GetProperty("startUtc"));
        }
    }

    [Fact]
    public void Inspect_OfATimeAtTheYearsEnd_CarriesOrCutsTheFraction()
    {
        using var session = new Session();
        var entry = Cases["F42"];
        var written = entry.GetProperty("text").GetProperty("DATE-OBS").GetString()!;
        var path = Made(session, written);
        var shown = Frame(session, path).GetProperty("startUtc").GetString()!;

        // "Truncated forms 2026-12-31T23:59:59.999 and 23:59:59 also acceptable."
        Assert.Contains(
            shown.TrimEnd('Z'),
            new[]
            {
                entry.GetProperty("expect").GetProperty("ms").GetString(),
                "2026-12-31T23:59:59.999",
            }
        );
        var text = session.Run("inspect", path).Output;
        Assert.True(
            text.Contains("31 Dec 2026 23:59:59", StringComparison.Ordinal)
                || text.Contains("1 Jan 2027 00:00:00", StringComparison.Ordinal),
            text
        );
        Assert.DoesNotContain("23:59:60", text, StringComparison.Ordinal);
        Assert.DoesNotContain("24:00:00", text, StringComparison.Ordinal);
    }

    private static void Near(string expected, JsonElement actual)
    {
        var apart =
            DateTimeOffset.Parse(expected + "Z", System.Globalization.CultureInfo.InvariantCulture)
            - actual.GetDateTimeOffset();
        Assert.InRange(Math.Abs(apart.TotalMilliseconds), 0.0, 1.0);
    }

    private static JsonElement Frame(Session session, string path)
    {
        var outcome = session.Run("inspect", path, "--json");
        Assert.Equal(0, outcome.Code);
        return outcome.Json().GetProperty("frame");
    }

    /// <summary>A frame of one pixel that was begun at a time.</summary>
    private static string Made(Session session, string start)
    {
        string[] cards =
        [
            "SIMPLE  =                    T",
            "BITPIX  =                    8",
            "NAXIS   =                    2",
            "NAXIS1  =                    1",
            "NAXIS2  =                    1",
            $"DATE-OBS= '{start}'",
            "END",
        ];
        var header = string.Concat(cards.Select(card => card.PadRight(80))).PadRight(2880);
        var path = Path.Combine(session.Folder, "frame.fits");
        File.WriteAllBytes(path, [.. Encoding.ASCII.GetBytes(header), .. new byte[2880]]);
        return path;
    }

    private static Dictionary<string, JsonElement> Read()
    {
        using var document = JsonDocument.Parse(
            File.ReadAllBytes(Checkout.At(Data + "timestamp.cases.json"))
        );
        return document
            .RootElement.EnumerateArray()
            .Select(entry => entry.Clone())
            .ToDictionary(entry => entry.GetProperty("id").GetString()!, StringComparer.Ordinal);
    }
}
