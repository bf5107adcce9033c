using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Framing.Fits.Tests;

public sealed class CardReaderTests
{
    [Theory]
    [InlineData("OBJECT  = 'It''s dark  '  / name", FitsValueKind.Text, "It's dark", "name")]
    [InlineData("OBJECT  = '   two  '", FitsValueKind.Text, "   two", "")]
    [InlineData("OBJECT  = ''", FitsValueKind.Text, "", "")]
    [InlineData("OBJECT  = 'a / b' / c", FitsValueKind.Text, "a / b", "c")]
    [InlineData("GAIN    =", FitsValueKind.Undefined, "", "")]
    [InlineData("GAIN    =              / not known", FitsValueKind.Undefined, "", "not known")]
    [InlineData("SIMPLE  =                    T / ok", FitsValueKind.Logical, "T", "ok")]
    [InlineData("NAXIS1  = +0060", FitsValueKind.Integer, "+0060", "")]
    [InlineData("EXPTIME = 1.8D2/s", FitsValueKind.Real, "1.8D2", "s")]
    [InlineData("CPX     = (1.0, 2.0) / pair", FitsValueKind.Complex, "(1.0, 2.0)", "pair")]
    [InlineData(
        "DATE-OBS= 2026-12-05T21:00:00",
        FitsValueKind.Unreadable,
        "2026-12-05T21:00:00",
        ""
    )]
    [InlineData("GAIN    = NaN", FitsValueKind.Unreadable, "NaN", "")]
    [InlineData("GAIN    = 1,5", FitsValueKind.Unreadable, "1,5", "")]
    public void Read_Value_IsTakenApart(
        string image,
        FitsValueKind kind,
        string text,
        string comment
    )
    {
        // FITS Standard 4.0, sections 4.1 and 4.2.
        var card = CardReader.Read(image, []);

        Assert.Equal(new FitsValue(kind, text), card.Value);
        Assert.Equal(comment, card.Comment);
        Assert.Equal(80, card.Image.Length);
    }

    [Theory]
    [InlineData("COMMENT = 5", "COMMENT", "= 5")]
    [InlineData("HISTORY flat fielded", "HISTORY", "flat fielded")]
    [InlineData("         blank keyword", "", " blank keyword")]
    [InlineData("STRANGE no value", "STRANGE", "no value")]
    [InlineData("HIERARCH no equals sign", "HIERARCH", " no equals sign")]
    public void Read_CommentaryCard_HasTextAndNoValue(string image, string keyword, string text)
    {
        var card = CardReader.Read(image, []);

        Assert.True(card.IsCommentary);
        Assert.Equal(keyword, card.Keyword);
        Assert.Equal(text.Trim(), card.Comment.Trim());
    }

    [Fact]
    public void Read_HierarchCard_KeepsItsWords()
    {
        var card = CardReader.Read("HIERARCH CAM  COOLER Power = 41.5 / percent", []);

        Assert.Equal("HIERARCH CAM COOLER Power", card.Keyword);
        Assert.Equal(41.5, card.Value.Number);
        Assert.Equal("percent", card.Comment);
    }

    [Theory]
    [InlineData("GAIN    =5", "GAIN")]
    [InlineData("OBJECT  = 'no end", "OBJECT")]
    [InlineData("GAIN    = abc", "GAIN")]
    [InlineData("OBJECT  = 'caf\u00E9'", "OBJECT")]
    public void Read_OddCard_IsReadWithOneWarning(string image, string names)
    {
        var warnings = new List<string>();

        CardReader.Read(image, warnings);

        Assert.StartsWith(names, Assert.Single(warnings), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1.6E1", 16L)]
    [InlineData("16.", 16L)]
    [InlineData("16.5", null)]
    [InlineData("9223372036854775807", 9223372036854775807L)]
    [InlineData("9223372036854775808", null)]
    [InlineData("-40", -40L)]
    public void Integer_OfNumber_IsWholeOrNull(string text, long? whole) =>
        Assert.Equal(whole, CardReader.Read($"GAIN    = {text}", []).Value.Integer);

    [Property]
    public bool Read_WrittenNumber_ComesBackExactly(NormalFloat number) =>
        new FitsHeaderBuilder().Add("NUMBER", number.Get).ToHeader().Number("NUMBER") == number.Get;

    [Property]
    public bool Read_WrittenWholeNumber_ComesBackExactly(long number) =>
        new FitsHeaderBuilder().Add("NUMBER", number).ToHeader().Integer("NUMBER") == number;

    [Property]
    public Property Read_WrittenText_ComesBack()
    {
        var character = Gen.OneOf(
            Gen.Choose(32, 126).Select(code => (char)code),
            Gen.Elements('\'', '&', ' ', '/')
        );
        var text = Gen.Choose(0, 400)
            .SelectMany(length => Gen.ArrayOf(character, length))
            .Select(characters => new string(characters).TrimEnd(' '));
        return Prop.ForAll(
            text.ToArbitrary(),
            written =>
            {
                var builder = new FitsHeaderBuilder()
                    .Add("OBJECT", written, "a name")
                    .Add("AFTER", 1L);
                var header = builder.ToHeader();
                return builder.Images.All(image => image.Length == 80)
                    && header.Text("OBJECT") == written
                    && header.Integer("AFTER") == 1;
            }
        );
    }

    [Property]
    public bool Read_AnyCharacters_IsAnswered(string? text)
    {
        var bytes = new string([
            .. (text ?? string.Empty).Select(character => (char)(character & 0xFF)),
        ]);
        return CardReader.Read(bytes.Length > 80 ? bytes[..80] : bytes, []).Image.Length == 80;
    }
}
