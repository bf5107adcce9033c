namespace Framing.Fits;

/// <summary>The shape of a picture: columns, rows, planes, and whether its colours stand side by side.</summary>
internal sealed record ImageShape(int Width, int Height, int Planes, bool Interleaved)
{
    private const int MostSide = 1_000_000;
    private const int MostPlanes = 1_000;

    public static ImageShape Read(string name, FitsHeader header, ICollection<string> warnings)
    {
        var axes = UnitReader.Axes(name, header);
        if (axes.Length < 2)
        {
            throw UnitReader.Wrong(
                name,
                "NAXIS",
                header,
                "a picture has 2 axes, or 3 with colours"
            );
        }

        for (var i = 3; i < axes.Length; i++)
        {
            if (axes[i] > 1)
            {
                warnings.Add(
                    FormattableString.Invariant(
                        $"NAXIS{i + 1} = {axes[i]}: only the first picture along this axis is read."
                    )
                );
            }
        }

        var interleaved = axes.Length > 2 && axes[0] is 3 or 4 && IsMarked(header);
        var (width, height, planes) = interleaved ? (1, 2, 0) : (0, 1, 2);
        CheckSide(name, header, axes, width);
        CheckSide(name, header, axes, height);
        var count = planes < axes.Length ? axes[planes] : 1;
        if (count is < 1 or > MostPlanes)
        {
            throw UnitReader.Wrong(
                name,
                "NAXIS3",
                header,
                axes[0] <= 4
                    ? "a picture has few planes; where the colours come first, CTYPE1 = 'RGB' says so"
                    : "a picture has 1 to 1000 planes"
            );
        }

        if (!interleaved && axes[0] == 3 && count > 4)
        {
            warnings.Add(
                FormattableString.Invariant(
                    $"NAXIS1 = 3 and NAXIS3 = {count}: if the colours come first, CTYPE1 = 'RGB' would say so."
                )
            );
        }

        return new((int)axes[width], (int)axes[height], (int)count, interleaved);
    }

    /// <summary>True when the header says that the first axis counts colours.</summary>
    private static bool IsMarked(FitsHeader header) =>
        header.Text("CTYPE1")?.Trim().ToUpperInvariant() is "RGB" or "RGBA" or "COLOR" or "COLOUR";

    private static void CheckSide(string name, FitsHeader header, long[] axes, int axis)
    {
        if (axes[axis] is < 1 or > MostSide)
        {
            throw UnitReader.Wrong(
                name,
                FitsHeader.Numbered("NAXIS", axis + 1),
                header,
                "a picture has 1 to 1000000 samples along a side"
            );
        }
    }
}
