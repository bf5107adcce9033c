using System.Globalization;
using System.Text;

namespace Framing.Fits;

/// <summary>Reads cells that hold characters.</summary>
internal static class TextCell
{
    /// <summary>The text up to a NUL, without spaces at its end.</summary>
    public static string Text(ReadOnlySpan<byte> stored)
    {
        var end = stored.IndexOf((byte)0);
        return CardReader.Readable(
            Encoding.Latin1.GetString(end < 0 ? stored : stored[..end]).TrimEnd(' ')
        );
    }

    /// <summary>The number that a cell of a text table writes.</summary>
    /// <remarks>An empty cell is 0, unless it is the text set apart; digits without a point have it before the last d of them.</remarks>
    public static SampleValue Number(FitsColumn column, string text, string name, long row)
    {
        text = text.Trim();
        if (column.NullText is { } nothing && text == nothing)
        {
            return SampleValue.Undefined;
        }

        if (text.Length == 0)
        {
            return new(column.Zero, null);
        }

        if (
            column.Kind == FitsColumnKind.Int64
            && long.TryParse(
                text,
                NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var whole
            )
        )
        {
            var exact = column is { Scale: 1.0, Zero: 0.0 };
            return new(column.Zero + (column.Scale * whole), exact ? whole : null);
        }

        if (FitsValue.ParseNumber(text) is not { } number)
        {
            throw new UnreadableFileException(
                name,
                FormattableString.Invariant($"column {column.Number}, row {row + 1}"),
                $"\"{text}\"",
                "a number stands there"
            );
        }

        var places = text.AsSpan().IndexOfAny(".EeDd") < 0 ? column.Decimals ?? 0 : 0;
        return new(column.Zero + (column.Scale * number / Math.Pow(10.0, places)), null);
    }
}
