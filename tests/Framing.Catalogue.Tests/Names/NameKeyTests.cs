using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Framing.Catalogue.Tests.Names;

public sealed class NameKeyTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Rows = CsvTable.Read(
        "deep-sky.csv"
    );

    [Fact]
    public void Of_NamesOfTheReferenceTable_GivesTheKeysTheTableWasMadeWith()
    {
        var rows = CsvTable.Read("name-keys.csv");
        Assert.All(rows, row => Assert.Equal(row["key"], NameKey.Of(row["text"])));
        Assert.Equal(3_196, rows.Count);
    }

    [Theory]
    [InlineData("NGC0281", "ngc281")]
    [InlineData("  ngc   281 ", "ngc281")]
    [InlineData("Sh 2 - 129", "sh2-129")]
    [InlineData("SH2129", "sh2-129")]
    [InlineData("the Heart Nebulae", "heartnebula")]
    [InlineData("α Lyrae", "alphalyr")]
    [InlineData("M 8 + M 20", "m8m20")]
    [InlineData("", "")]
    [InlineData(" - ", "")]
    [InlineData("日本", "")]
    public void Of_Spellings_GiveOneKey(string text, string key) =>
        Assert.Equal(key, NameKey.Of(text));

    [Property(MaxTest = 2000)]
    public Property Find_AnyWayOfWritingADesignation_IsTheSameRow() =>
        Prop.ForAll(
            Gen.Zip(Gen.Choose(0, Rows.Count - 1), Gen.Choose(0, int.MaxValue - 1)).ToArbitrary(),
            pair =>
            {
                var (index, seed) = pair;
                var id = Rows[index]["id"];
                var written = Scramble(id, new Random(seed));
                return (ObjectCatalogue.Embedded.Find(written).Entry?.Id == id).Label(
                    $"{id} written as {written}"
                );
            }
        );

    [Property(MaxTest = 5000)]
    public bool Of_AnyText_HasOnlySmallLettersDigitsAndSigns(string? text) =>
        NameKey
            .Of(text ?? string.Empty)
            .All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '+');

    [Property(MaxTest = 40)]
    public bool Find_AnyText_Answers(string? text)
    {
        var result = ObjectCatalogue.Embedded.Find(text ?? string.Empty);
        return result.IsFound ? result.Suggestions.Count == 0 : result.Suggestions.Count <= 3;
    }

    [Fact]
    public void Of_VeryLongText_IsCutNotSlow()
    {
        var key = NameKey.Of(new string('x', 5_000_000));
        Assert.Equal(100, key.Length);
    }

    /// <summary>Changes what must not matter: case, spaces, hyphens, leading zeros.</summary>
    private static string Scramble(string name, Random random)
    {
        var text = new System.Text.StringBuilder();
        for (var i = 0; i < name.Length; i++)
        {
            var c = name[i];
            var before = i == 0 ? ' ' : name[i - 1];
            if (c == ' ')
            {
                text.Append(
                    random.Next(4) switch
                    {
                        0 => "",
                        1 => "  ",
                        2 => "-",
                        _ => " ",
                    }
                );

                // Two numbers stay two.
                if (
                    char.IsAsciiDigit(before)
                    && i + 1 < name.Length
                    && char.IsAsciiDigit(name[i + 1])
                )
                {
                    text.Append(' ');
                }

                continue;
            }

            if (char.IsAsciiDigit(c) && !char.IsAsciiDigit(before))
            {
                text.Append('0', before == '+' ? 0 : random.Next(3));
            }

            text.Append(random.Next(2) == 0 ? char.ToUpperInvariant(c) : char.ToLowerInvariant(c));
        }

        return random.Next(3) == 0 ? $"  {text} " : text.ToString();
    }
}
