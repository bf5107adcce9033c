using System.Globalization;

namespace Framing.Fits;

/// <summary>Reads the columns of a table from its header.</summary>
internal static class ColumnReader
{
    private const int MostColumns = 999;

    /// <summary>Reads all columns.</summary>
    /// <param name="name">The file.</param>
    /// <param name="header">The table's header.</param>
    /// <param name="rowBytes">Bytes of a row.</param>
    /// <param name="isText">True for a table of text.</param>
    public static FitsColumn[] Read(string name, FitsHeader header, long rowBytes, bool isText)
    {
        var count = header.Integer("TFIELDS");
        if (count is not (>= 0 and <= MostColumns))
        {
            throw UnitReader.Wrong(name, "TFIELDS", header, "the number of columns is 0 to 999");
        }

        var columns = new FitsColumn[count.Value];
        long offset = 0;
        for (var i = 0; i < columns.Length; i++)
        {
            var keyword = FitsHeader.Numbered("TFORM", i + 1);
            var form = header.Text(keyword)?.Trim() ?? string.Empty;
            var column =
                (isText ? OfText(header, i + 1, form) : OfBinary(header, i + 1, form, offset))
                ?? throw UnitReader.Wrong(
                    name,
                    keyword,
                    header,
                    isText
                        ? "it is Aw, Iw, Fw.d, Ew.d or Dw.d"
                        : "it is a count and one of LXBIJKAEDCMPQ"
                );
            offset = isText ? column.Offset + column.Bytes : offset + column.Bytes;
            if (column.Offset < 0 || column.Offset + (long)column.Bytes > rowBytes)
            {
                throw UnitReader.Wrong(
                    name,
                    keyword,
                    header,
                    FormattableString.Invariant($"the columns fit into rows of {rowBytes} bytes")
                );
            }

            columns[i] = column;
        }

        return columns;
    }

    private static FitsColumn? OfBinary(FitsHeader header, int number, string form, long offset)
    {
        var digits = form.AsSpan().IndexOfAnyExceptInRange('0', '9');
        if (
            digits < 0
            || digits > 9
            || !TryCount(form.AsSpan(0, digits), 1, out var count)
            || offset > int.MaxValue
        )
        {
            return null;
        }

        var letter = form[digits];
        var isVariable = letter is 'P' or 'Q';
        if (isVariable && (count > 1 || form.Length < digits + 2))
        {
            return null;
        }

        if (KindOf(isVariable ? form[digits + 1] : letter) is not { } kind)
        {
            return null;
        }

        var column = new FitsColumn
        {
            Number = number,
            Name = Text(header, "TTYPE", number)?.Trim() ?? string.Empty,
            Unit = Text(header, "TUNIT", number)?.Trim(),
            Kind = kind,
            Count = isVariable ? Most(form.AsSpan(digits + 2)) : count,
            IsVariable = isVariable,
            IsWide = letter == 'Q',
            Offset = (int)offset,
            Scale = Number(header, "TSCAL", number) ?? 1.0,
            Zero = Number(header, "TZERO", number) ?? 0.0,
            Null = header.Integer(FitsHeader.Numbered("TNULL", number)),
            Shape = Shape(Text(header, "TDIM", number)),
        };
        var bytes = isVariable ? (long)count * (letter == 'Q' ? 16 : 8) : column.BytesOf(count);
        return bytes > int.MaxValue ? null : column with { Bytes = (int)bytes };
    }

    private static FitsColumn? OfText(FitsHeader header, int number, string form)
    {
        var start = header.Integer(FitsHeader.Numbered("TBCOL", number)) ?? 0;
        var point = form.IndexOf('.', StringComparison.Ordinal);
        var width =
            point < 0
                ? form.AsSpan(Math.Min(1, form.Length))
                : form.AsSpan(1, Math.Max(0, point - 1));
        FitsColumnKind? kind =
            form.Length == 0
                ? null
                : form[0] switch
                {
                    'A' => FitsColumnKind.Text,
                    'I' => FitsColumnKind.Int64,
                    'F' or 'E' or 'D' => FitsColumnKind.Float64,
                    _ => null,
                };
        var decimals = 0;
        if (
            kind is null
            || start is < 1 or > int.MaxValue
            || !TryCount(width, null, out var bytes)
            || bytes is 0 or > 1_000_000
            || (point >= 0 && !TryCount(form.AsSpan(point + 1), null, out decimals))
            || decimals > 100
        )
        {
            return null;
        }

        return new FitsColumn
        {
            Number = number,
            Name = Text(header, "TTYPE", number)?.Trim() ?? string.Empty,
            Unit = Text(header, "TUNIT", number)?.Trim(),
            Kind = kind.Value,
            Count = kind == FitsColumnKind.Text ? bytes : 1,
            Offset = (int)start - 1,
            Bytes = bytes,
            Scale = Number(header, "TSCAL", number) ?? 1.0,
            Zero = Number(header, "TZERO", number) ?? 0.0,
            NullText = Text(header, "TNULL", number)?.Trim(),
            Decimals = decimals,
        };
    }

    private static FitsColumnKind? KindOf(char letter) =>
        letter switch
        {
            'L' => FitsColumnKind.Logical,
            'X' => FitsColumnKind.Bit,
            'B' => FitsColumnKind.UInt8,
            'I' => FitsColumnKind.Int16,
            'J' => FitsColumnKind.Int32,
            'K' => FitsColumnKind.Int64,
            'A' => FitsColumnKind.Text,
            'E' => FitsColumnKind.Float32,
            'D' => FitsColumnKind.Float64,
            'C' => FitsColumnKind.Complex64,
            'M' => FitsColumnKind.Complex128,
            _ => null,
        };

    /// <summary>The number in brackets behind P or Q.</summary>
    private static int Most(ReadOnlySpan<char> rest) =>
        rest is ['(', .., ')'] && TryCount(rest[1..^1], null, out var most) ? most : 0;

    private static List<int> Shape(string? text)
    {
        var lengths = new List<int>();
        if (text?.Trim() is ['(', .., ')'] brackets)
        {
            foreach (var part in brackets[1..^1].Split(','))
            {
                if (!TryCount(part.AsSpan().Trim(), null, out var length))
                {
                    return [];
                }

                lengths.Add(length);
            }
        }

        return lengths;
    }

    private static bool TryCount(ReadOnlySpan<char> digits, int? otherwise, out int count)
    {
        if (digits.IsEmpty && otherwise is { } number)
        {
            count = number;
            return true;
        }

        return int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out count);
    }

    private static string? Text(FitsHeader header, string name, int number) =>
        header.Text(FitsHeader.Numbered(name, number));

    private static double? Number(FitsHeader header, string name, int number) =>
        header.Number(FitsHeader.Numbered(name, number));
}
