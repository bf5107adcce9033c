namespace Framing.Fits;

/// <summary>Finds out what a header-and-data unit holds, and how long it is, from its header.</summary>
/// <remarks>Source: FITS Standard 4.0, sections 3.3.2, 4.4.1, 6 and 7.</remarks>
internal static class UnitReader
{
    private const int MostAxes = 999;

    public static FitsUnit Read(ByteSource source, long start, int number)
    {
        var header = HeaderReader.Read(source, start, out var dataStart);
        var axes = Axes(source.Name, header);
        var length = DataLength(source.Name, header, axes);
        return new(number, KindOf(header, number, axes, length), header, dataStart, length)
        {
            HeaderStart = start,
        };
    }

    /// <summary>The lengths of all axes, each 0 or more.</summary>
    public static long[] Axes(string name, FitsHeader header)
    {
        var count = Whole(name, header, "NAXIS");
        if (count is < 0 or > MostAxes)
        {
            throw Wrong(name, "NAXIS", header, "the number of axes is 0 to 999");
        }

        var axes = new long[count];
        for (var i = 0; i < axes.Length; i++)
        {
            var keyword = FitsHeader.Numbered("NAXIS", i + 1);
            axes[i] = Whole(name, header, keyword);
            if (axes[i] < 0)
            {
                throw Wrong(name, keyword, header, "the length of an axis is 0 or more");
            }
        }

        return axes;
    }

    public static int BitsPerSample(string name, FitsHeader header)
    {
        var bits = Whole(name, header, "BITPIX");
        return bits is 8 or 16 or 32 or 64 or -32 or -64
            ? (int)bits
            : throw Wrong(name, "BITPIX", header, "it is one of 8, 16, 32, 64, -32, -64");
    }

    public static UnreadableFileException Wrong(
        string name,
        string keyword,
        FitsHeader header,
        string expected
    ) =>
        new(
            name,
            keyword,
            header.Find(keyword) is { } card ? $"= {card.Value.Text}" : "it is missing",
            expected
        );

    private static long Whole(string name, FitsHeader header, string keyword) =>
        header.Integer(keyword) ?? throw Wrong(name, keyword, header, "it is a whole number");

    private static long DataLength(string name, FitsHeader header, long[] axes)
    {
        var bits = BitsPerSample(name, header);
        if (axes.Length == 0)
        {
            return 0;
        }

        var groups = axes[0] == 0 && header.Logical("GROUPS") == true;
        Int128 count = 1;
        foreach (var axis in axes.AsSpan(groups ? 1 : 0))
        {
            count *= axis;
            if (count > long.MaxValue)
            {
                throw new UnreadableFileException(
                    name,
                    "NAXISn",
                    $"= {string.Join(" x ", axes)}",
                    "no file can hold so many samples"
                );
            }
        }

        var extra = header.Integer("PCOUNT") ?? 0;
        var repeated = header.Integer("GCOUNT") ?? 1;
        if (extra < 0 || repeated < 0)
        {
            throw Wrong(
                name,
                extra < 0 ? "PCOUNT" : "GCOUNT",
                header,
                "it is a whole number of 0 or more"
            );
        }

        // An image has neither; a primary array with a stray PCOUNT is as long as its axes say.
        var isTable = header.Has("XTENSION");
        var bytes =
            isTable || groups
                ? Product(Math.Abs(bits) / 8, repeated, extra + count)
                : count * (Math.Abs(bits) / 8);
        return bytes <= long.MaxValue / 2
            ? (long)bytes
            : throw new UnreadableFileException(
                name,
                "NAXISn",
                $"= {string.Join(" x ", axes)}",
                "no file can hold so many samples"
            );
    }

    /// <summary>A product that stays at the largest number rather than running over.</summary>
    private static Int128 Product(long a, long b, Int128 c) =>
        b == 0 || c == 0 ? 0
        : c > Int128.MaxValue / a / b ? Int128.MaxValue
        : a * b * c;

    private static FitsUnitKind KindOf(FitsHeader header, int number, long[] axes, long length)
    {
        var extension = header.Text("XTENSION");
        if (number > 0 && extension is "BINTABLE" or "A3DTABLE")
        {
            return header.Logical("ZIMAGE") == true
                ? FitsUnitKind.CompressedImage
                : FitsUnitKind.BinaryTable;
        }

        if (number > 0 && extension is "TABLE")
        {
            return FitsUnitKind.TextTable;
        }

        if (number > 0 && extension is not ("IMAGE" or "IUEIMAGE"))
        {
            return FitsUnitKind.Other;
        }

        if (axes.Length == 0)
        {
            return FitsUnitKind.HeaderOnly;
        }

        return axes[0] == 0 && header.Logical("GROUPS") == true ? FitsUnitKind.Other
            : length == 0 ? FitsUnitKind.HeaderOnly
            : FitsUnitKind.Image;
    }
}
