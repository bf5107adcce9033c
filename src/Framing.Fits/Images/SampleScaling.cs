namespace Framing.Fits;

/// <summary>How stored samples become values: value = zero + scale · stored, and which stored number means "undefined".</summary>
/// <param name="BitsPerSample">BITPIX: 8, 16, 32, 64 whole numbers; -32, -64 IEEE numbers.</param>
/// <param name="Scale">BSCALE.</param>
/// <param name="Zero">BZERO.</param>
/// <param name="Blank">BLANK, for whole numbers only; null when no number is set apart.</param>
/// <remarks>Source: FITS Standard 4.0, sections 4.4.2.5 and 5.</remarks>
public readonly record struct SampleScaling(
    int BitsPerSample,
    double Scale = 1.0,
    double Zero = 0.0,
    long? Blank = null
)
{
    /// <summary>Bytes of a stored sample.</summary>
    public int BytesPerSample => Math.Abs(BitsPerSample) / 8;

    /// <summary>True when values are whole numbers: stored whole numbers, a whole BZERO, BSCALE 1.</summary>
    public bool IsWhole => BitsPerSample > 0 && Scale == 1.0 && double.IsInteger(Zero);

    /// <summary>True when values differ from stored numbers.</summary>
    public bool Changes => Scale != 1.0 || Zero != 0.0;

    /// <summary>What a sample is, as values are read.</summary>
    public SampleFormat Format =>
        (BitsPerSample, Scale, Zero) switch
        {
            (8, 1.0, -128.0) => SampleFormat.Int8,
            (8, _, _) => SampleFormat.UInt8,
            (16, 1.0, 32768.0) => SampleFormat.UInt16,
            (16, _, _) => SampleFormat.Int16,
            (32, 1.0, 2147483648.0) => SampleFormat.UInt32,
            (32, _, _) => SampleFormat.Int32,
            (64, 1.0, 9223372036854775808.0) => SampleFormat.UInt64,
            (64, _, _) => SampleFormat.Int64,
            (-32, _, _) => SampleFormat.Float32,
            _ => SampleFormat.Float64,
        };
}
