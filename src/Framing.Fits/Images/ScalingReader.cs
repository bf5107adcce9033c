namespace Framing.Fits;

/// <summary>Reads from a header how stored samples become values.</summary>
internal static class ScalingReader
{
    public static SampleScaling Read(string name, FitsHeader header, ICollection<string> warnings)
    {
        var bits = UnitReader.BitsPerSample(name, header);
        var scale = NumberOr(header, "BSCALE", 1.0, warnings);
        var zero = NumberOr(header, "BZERO", 0.0, warnings);
        if (scale == 0.0)
        {
            warnings.Add("BSCALE = 0 would make all samples equal; it is read as 1.");
            scale = 1.0;
        }

        return new(bits, scale, zero, Blank(header, bits, warnings));
    }

    private static double NumberOr(
        FitsHeader header,
        string keyword,
        double otherwise,
        ICollection<string> warnings
    )
    {
        if (header.Number(keyword) is { } number)
        {
            return number;
        }

        if (header.Find(keyword) is { Value.Kind: not FitsValueKind.Undefined } card)
        {
            warnings.Add(
                FormattableString.Invariant(
                    $"{keyword} = {card.Value.Text} is no number; {otherwise} is taken."
                )
            );
        }

        return otherwise;
    }

    private static long? Blank(FitsHeader header, int bits, ICollection<string> warnings)
    {
        if (!header.Has("BLANK"))
        {
            return null;
        }

        if (bits < 0)
        {
            warnings.Add("BLANK belongs to whole numbers; it is not used for IEEE samples.");
            return null;
        }

        if (header.Integer("BLANK") is { } blank)
        {
            return blank;
        }

        warnings.Add("BLANK is no whole number; it is not used.");
        return null;
    }
}
