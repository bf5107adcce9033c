using System.Globalization;
using System.Text.Json;

namespace Framing.Sky.Tests;

/// <summary>The cases of kind text: what each text means, how a value is written, what a refusal names.</summary>
public sealed class TextCases
{
    private static readonly Dictionary<string, JsonElement> Cases = TestData
        .Json("text.cases.json")
        .EnumerateArray()
        .ToDictionary(item => item.GetProperty("id").GetString()!, StringComparer.Ordinal);

    [Fact]
    public void File_AsCopied_HoldsFourCases() =>
        Assert.Equal("F32 F33 F34 F35", string.Join(' ', Cases.Keys));

    [Fact]
    public void F32_Declinations_SignBelongsToTheWhole()
    {
        var expected = Expected("F32");
        Assert.Equal(6, expected.Count);
        Assert.Equal(
            Texts("F32", "dec").Order(StringComparer.Ordinal),
            expected.Keys.Order(StringComparer.Ordinal)
        );
        foreach (var (text, value) in expected)
        {
            var read = CoordinateReader.ReadDeclination(text).Value;
            // The file gives seven decimals of a degree; its tolerance is 0.05 arcsec.
            Assert.Equal(value.GetDouble() * 3600.0, read.Arcseconds, 0.05);
            Assert.Equal(value.GetDouble() < 0.0, read.Radians < 0.0);
        }
    }

    [Fact]
    public void F33_Pairs_FirstPartInHours()
    {
        var expected = Expected("F33");
        Assert.Equal(5, expected.Count);
        Assert.Equal(
            Texts("F33", "radec").Order(StringComparer.Ordinal),
            expected.Keys.Order(StringComparer.Ordinal)
        );
        foreach (var (text, value) in expected)
        {
            var direction = SkyDirection.FromDegrees(value[0].GetDouble(), value[1].GetDouble());
            var read = CoordinateReader.ReadDirection(text).Value;
            Assert.Equal(0.0, read.SeparationTo(direction).Arcseconds, 0.1);
        }
    }

    [Fact]
    public void F34_Values_RoundedThenSplit()
    {
        var expected = Expected("F34");
        Assert.Equal(7, expected.Count);
        foreach (var (key, value) in expected)
        {
            var part = key.Split(' ');
            var angle = Angle.FromDegrees(double.Parse(part[1], CultureInfo.InvariantCulture));
            var text =
                part[0] == "ra"
                    ? CoordinateText.RightAscension(angle, 1, ":")
                    : CoordinateText.Declination(angle, 0, ":");
            var allowed =
                value.ValueKind == JsonValueKind.Array
                    ? value.EnumerateArray().Select(item => item.GetString())
                    : [value.GetString()];
            Assert.Contains(text, allowed, StringComparer.Ordinal);
        }
    }

    [Fact]
    public void F35_Faults_NameThePart()
    {
        var expected = Expected("F35");
        Assert.Equal(8, expected.Count);
        Assert.Equal(8, Texts("F35", "dec").Count + Texts("F35", "ra").Count);
        foreach (var (key, words) in expected)
        {
            var isRa = key.StartsWith("ra", StringComparison.Ordinal);
            var inputs = Texts("F35", isRa ? "ra" : "dec");
            var text = inputs.Single(input =>
                input.Length == 0
                    ? key == "ra (empty)"
                    : key == $"ra {input}" || key == $"dec {input}" || key == $"ra {input} (hours)"
            );
            var error = isRa
                ? CoordinateReader.ReadRightAscension(text).Error
                : CoordinateReader.ReadDeclination(text).Error;
            Assert.NotNull(error);

            // The file asks for any of its words; ours carry all of them.
            Assert.All(
                words.EnumerateArray(),
                word => Assert.Contains(word.GetString()!, error, StringComparison.Ordinal)
            );
        }
    }

    private static Dictionary<string, JsonElement> Expected(string id) =>
        Cases[id]
            .GetProperty("expect")
            .EnumerateObject()
            .ToDictionary(item => item.Name, item => item.Value, StringComparer.Ordinal);

    private static List<string> Texts(string id, string kind) =>
        [
            .. Cases[id]
                .GetProperty("text")
                .GetProperty(kind)
                .EnumerateArray()
                .Select(item => item.GetString()!),
        ];
}
