using System.Buffers.Binary;
using System.Text;

namespace Framing.Fits;

/// <summary>The checksum of a header-and-data unit: the ones' complement sum of its 32-bit words.</summary>
/// <remarks>Source: FITS Standard 4.0, section 4.4.2.7 and appendix J.</remarks>
internal static class UnitChecksum
{
    /// <summary>The value that makes room for a checksum: 16 zeros.</summary>
    private const string Nothing = "0000000000000000";

    private const int ValueColumn = 11;

    /// <summary>Adds bytes to a sum; the bytes start on a word, and a last word that is cut is filled with zeros.</summary>
    public static uint Add(uint sum, ReadOnlySpan<byte> bytes)
    {
        ulong total = sum;
        while (bytes.Length >= 4)
        {
            total += BinaryPrimitives.ReadUInt32BigEndian(bytes);
            bytes = bytes[4..];
            total = (total & 0xFFFF_FFFF) + (total >> 32);
        }

        if (bytes.Length > 0)
        {
            Span<byte> last = stackalloc byte[4];
            last.Clear();
            bytes.CopyTo(last);
            total += BinaryPrimitives.ReadUInt32BigEndian(last);
        }

        total = (total & 0xFFFF_FFFF) + (total >> 32);
        return (uint)((total & 0xFFFF_FFFF) + (total >> 32));
    }

    /// <summary>Adds two sums.</summary>
    public static uint Add(uint sum, uint other)
    {
        var total = (ulong)sum + other;
        return (uint)((total & 0xFFFF_FFFF) + (total >> 32));
    }

    /// <summary>True when the sum over a unit says that its CHECKSUM is right: all ones, or nothing.</summary>
    public static bool IsRight(uint sum) => sum is 0 or 0xFFFF_FFFF;

    /// <summary>True for a card that holds a checksum where the standard has it: 16 characters from column 12.</summary>
    public static bool Stands(FitsCard card) =>
        card.Keyword == "CHECKSUM"
        && card.Value is { Kind: FitsValueKind.Text, Text.Length: 16 }
        && card.Image[ValueColumn - 1] == '\''
        && card.Image[ValueColumn + 16] == '\'';

    /// <summary>The card's image with another checksum.</summary>
    /// <param name="image">The card of 80 characters.</param>
    /// <param name="value">16 characters; null makes room for one.</param>
    public static string With(string image, string? value = null) =>
        string.Concat(
            image.AsSpan(0, ValueColumn),
            value ?? Nothing,
            image.AsSpan(ValueColumn + 16)
        );

    /// <summary>The 16 characters for a sum that was made with <see cref="Nothing"/> in their place.</summary>
    public static string Encode(uint sum)
    {
        var wanted = ~sum;
        Span<char> characters = stackalloc char[16];
        Span<int> four = stackalloc int[4];
        for (var i = 0; i < 4; i++)
        {
            var value = (int)((wanted >> (24 - (8 * i))) & 0xFF);
            four.Fill((value / 4) + '0');
            four[0] += value % 4;

            // Punctuation is avoided by moving a pair of characters apart; their sum stays.
            for (var again = true; again; )
            {
                again = false;
                for (var k = 0; k < 4; k += 2)
                {
                    while (IsPunctuation(four[k]) || IsPunctuation(four[k + 1]))
                    {
                        four[k]++;
                        four[k + 1]--;
                        again = true;
                    }
                }
            }

            for (var k = 0; k < 4; k++)
            {
                characters[(4 * k) + i] = (char)four[k];
            }
        }

        // Turned by one place to the right: the value begins in column 12, one behind a whole word.
        return string.Concat(characters[15..], characters[..15]);
    }

    /// <summary>The bytes of a header: its cards, END, and spaces up to a whole block.</summary>
    public static byte[] Header(IEnumerable<string> images)
    {
        var text = new StringBuilder();
        foreach (var image in images)
        {
            text.Append(image);
        }

        text.Append("END".PadRight(FitsCard.Length));
        var length = (int)FitsFile.Blocks(text.Length);
        return Encoding.Latin1.GetBytes(text.Append(' ', length - text.Length).ToString());
    }

    private static bool IsPunctuation(int character) =>
        character is (>= 0x3A and <= 0x40) or (>= 0x5B and <= 0x60);
}
