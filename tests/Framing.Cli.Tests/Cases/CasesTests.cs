using System.Text.Json;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>
/// The whole list of inputs that a framing tool may meet, with the right answers (Data/cases.json, each with its basis): those
/// with a file through the command, those with a text here or in the room that reads such texts.
/// </summary>
public sealed class CasesTests
{
    private static readonly JsonElement[] All =
    [
        .. JsonDocument
            .Parse(File.ReadAllText(Checkout.At("tests/Framing.Cli.Tests/Data/cases.json")))
            .RootElement.GetProperty("cases")
            .EnumerateArray(),
    ];

    /// <summary>15 kinds, 51 cases; each is named where a test holds it.</summary>
    [Fact]
    public void Cases_Counted_AreEachHeldByATest()
    {
        Assert.Equal(51, All.Length);
        Assert.Equal(
            "axes 2, compare 4, damaged 4, distortion 2, frame 3, geometry 5, hdu 3, header 5, linear 3, localtime 4, raster 5, rows 1, samples 3, text 4, timestamp 3",
            string.Join(
                ", ",
                All.GroupBy(Kind, StringComparer.Ordinal)
                    .OrderBy(kind => kind.Key, StringComparer.Ordinal)
                    .Select(kind => FormattableString.Invariant($"{kind.Key} {kind.Count()}"))
            )
        );
        var elsewhere = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["text"] = "tests/Framing.Sky.Tests/Text/TextCases.cs",
            ["localtime"] = "tests/Framing.Nights.Tests/Clocks/SiteClockTests.cs",
        };
        string[] here = ["F15", "F41", "F42", "F49", "F51"];
        foreach (var entry in All.Where(entry => !HasFile(entry)))
        {
            Assert.True(
                elsewhere.TryGetValue(Kind(entry), out var test)
                    ? File.ReadAllText(Checkout.At(test))
                        .Contains($"\"{Id(entry)}\"", StringComparison.Ordinal)
                    : here.Contains(Id(entry), StringComparer.Ordinal),
                Id(entry)
            );
        }
    }

    [Fact]
    public void Inspect_EveryCaseWithAFile_SaysWhatIsRight()
    {
        using var session = new Session();
        var (cases, held) = (0, 0);
        foreach (var entry in All.Where(HasFile))
        {
            var name = entry.GetProperty("file").GetString()!;
            var path = new[] { "Fits", "Imaging" }
                .Select(room => Checkout.At($"tests/Framing.{room}.Tests/Data/cases/{name}"))
                .First(File.Exists);
            var answered = new InspectCase(session, path, entry.GetProperty("expect")).Held();
            Assert.True(answered > 0, Id(entry));
            held += answered;
            cases++;
        }

        Assert.Equal(38, cases);
        Assert.Equal(78, held);
    }

    [Fact]
    public void Frame_J2000CarriedToAnEquinox_IsWhereTheCaseSays()
    {
        var entry = Entry("F15");
        var text = entry.GetProperty("text");

        var carried = EquatorialFrame
            .Fk5(text.GetProperty("to_epoch").GetDouble())
            .FromIcrs(
                EquatorialFrame
                    .Fk5(2000.0)
                    .ToIcrs(
                        SkyDirection.FromDegrees(
                            text.GetProperty("ra").GetDouble(),
                            text.GetProperty("dec").GetDouble()
                        )
                    )
            );

        AssertPlace(entry.GetProperty("expect").GetProperty("ra_dec"), carried, 2.0);
    }

    [Fact]
    public void Inspect_TimesOfTheStandard_AreToldInUtc()
    {
        using var session = new Session();
        var count = 0;
        foreach (var expected in Entry("F41").GetProperty("expect").EnumerateObject())
        {
            var start = Start(session, expected.Name, "--json");
            Assert.Equal(expected.Value.GetString() + "Z", start);
            count++;
        }

        Assert.Equal(4, count);
    }

    [Fact]
    public void Inspect_ATimeJustBeforeANewYear_IsNeverASixtiethSecond()
    {
        using var session = new Session();
        var entry = Entry("F42");
        var text = entry.GetProperty("text").GetProperty("DATE-OBS").GetString()!;

        // The case's truncated forms.
        Assert.Equal("2026-12-31T23:59:59.999Z", Start(session, text, "--json"));
        Assert.Contains("31 Dec 2026 23:59:59 UTC", Start(session, text), StringComparison.Ordinal);
    }

    [Fact]
    public void Mean_OfCentresAboutRightAscensionZero_IsThatOfTheirVectors()
    {
        var entry = Entry("F49");
        var sum = entry
            .GetProperty("text")
            .GetProperty("centres")
            .EnumerateArray()
            .Select(centre =>
                SkyDirection.FromDegrees(centre[0].GetDouble(), centre[1].GetDouble()).Vector
            )
            .Aggregate((one, other) => one + other);

        AssertPlace(
            entry.GetProperty("expect").GetProperty("ra_dec"),
            SkyDirection.FromVector(sum),
            5.0
        );
    }

    [Fact]
    public void Offset_OverThePolesAndRightAscensionZero_EndsWhereTheCaseSays()
    {
        var entry = Entry("F51");
        var ends = entry.GetProperty("expect").EnumerateObject().ToArray();
        var moves = entry.GetProperty("text").GetProperty("moves").EnumerateArray().ToArray();
        Assert.Equal(3, moves.Length);
        foreach (var (move, end) in moves.Zip(ends))
        {
            var place = SkyDirection
                .FromDegrees(move[0].GetDouble(), move[1].GetDouble())
                .Offset(
                    PositionAngle.FromDegrees(move[3].GetDouble()),
                    Angle.FromDegrees(move[2].GetDouble())
                );
            AssertPlace(end.Value, place, 1.0);
        }
    }

    private static string Start(Session session, string text, params string[] options)
    {
        var path = Path.Combine(session.Folder, "dated.fits");
        FitsWriter.WriteImage<byte>(
            path,
            2,
            2,
            1,
            new byte[4],
            new FitsHeaderBuilder().Add("DATE-OBS", text)
        );
        var outcome = session.Run(["inspect", path, .. options]);
        return options.Length == 0
            ? outcome.Output
            : outcome.Json().GetProperty("frame").GetProperty("startUtc").GetString()!;
    }

    private static void AssertPlace(JsonElement expected, SkyDirection place, double arcseconds) =>
        Assert.InRange(
            place
                .SeparationTo(
                    SkyDirection.FromDegrees(expected[0].GetDouble(), expected[1].GetDouble())
                )
                .Arcseconds,
            0.0,
            arcseconds
        );

    private static JsonElement Entry(string id) => All.Single(entry => Id(entry) == id);

    private static string Id(JsonElement entry) => entry.GetProperty("id").GetString()!;

    private static string Kind(JsonElement entry) => entry.GetProperty("kind").GetString()!;

    private static bool HasFile(JsonElement entry) =>
        entry.TryGetProperty("file", out var file) && file.ValueKind == JsonValueKind.String;
}
