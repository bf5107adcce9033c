using System.Text;

namespace Framing.Fits;

/// <summary>Reads the cards of a header: from the blocks of a FITS file, or from a text with one card a line.</summary>
internal static class HeaderReader
{
    /// <summary>A header longer than this is no header: 10 MB are 131,000 cards.</summary>
    public const int MostBytes = 3600 * Block;

    public const int Block = 2880;

    /// <summary>Reads a header from a file.</summary>
    /// <param name="source">The file.</param>
    /// <param name="start">Where the header starts.</param>
    /// <param name="end">Where the data behind it start: the next whole block, or the end of the file.</param>
    public static FitsHeader Read(ByteSource source, long start, out long end)
    {
        var cards = new List<FitsCard>();
        var warnings = new List<string>();
        var block = new byte[Block];
        for (var at = start; at < source.Length; at += Block)
        {
            var size = (int)Math.Min(Block, source.Length - at);
            if (at + size - start > MostBytes)
            {
                throw NoEnd(source.Name, cards.Count);
            }

            source.ReadExactly(at, block.AsSpan(0, size));
            for (var place = 0; place < size; place += FitsCard.Length)
            {
                var length = Math.Min(FitsCard.Length, size - place);
                var image = Encoding.Latin1.GetString(block, place, length);
                if (IsEnd(image))
                {
                    end = Math.Min(at + Block, source.Length);
                    return new(cards, warnings);
                }

                cards.Add(CardReader.Read(image, warnings));
            }
        }

        throw NoEnd(source.Name, cards.Count);
    }

    /// <summary>Reads plain header cards from a text, one a line; END and empty lines may stand or not.</summary>
    public static FitsHeader ReadLines(string name, string text)
    {
        var cards = new List<FitsCard>();
        var warnings = new List<string>();
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            var image = line.TrimEnd().ToString();
            if (image.Length > FitsCard.Length)
            {
                throw new UnreadableFileException(
                    name,
                    FormattableString.Invariant($"line {cards.Count + 1}"),
                    FormattableString.Invariant($"{image.Length} characters"),
                    "a header card has at most 80"
                );
            }

            if (IsEnd(image.PadRight(8)))
            {
                break;
            }

            if (image.Length > 0)
            {
                cards.Add(CardReader.Read(image, warnings));
            }
        }

        return new(cards, warnings);
    }

    private static bool IsEnd(string image) =>
        image.StartsWith("END", StringComparison.Ordinal)
        && image.AsSpan(3, Math.Min(image.Length, 8) - 3).IndexOfAnyExcept(' ') < 0
        && (image.Length <= 8 || image[8] == ' ');

    private static UnreadableFileException NoEnd(string name, int cards) =>
        new(
            name,
            "header",
            FormattableString.Invariant($"no END card among {cards} cards"),
            "a FITS header ends with the card END"
        );
}
