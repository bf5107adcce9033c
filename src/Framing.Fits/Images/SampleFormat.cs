namespace Framing.Fits;

/// <summary>What a sample of an image is, as its values are read (offsets that make a type unsigned are counted in).</summary>
public enum SampleFormat
{
    /// <summary>8-bit whole numbers from 0.</summary>
    UInt8,

    /// <summary>8-bit whole numbers, signed (BZERO = -128).</summary>
    Int8,

    /// <summary>16-bit whole numbers, signed.</summary>
    Int16,

    /// <summary>16-bit whole numbers from 0 (BZERO = 32768, or a PNG of 16 bits).</summary>
    UInt16,

    /// <summary>32-bit whole numbers, signed.</summary>
    Int32,

    /// <summary>32-bit whole numbers from 0 (BZERO = 2147483648).</summary>
    UInt32,

    /// <summary>64-bit whole numbers, signed.</summary>
    Int64,

    /// <summary>64-bit whole numbers from 0 (BZERO = 2^63).</summary>
    UInt64,

    /// <summary>IEEE numbers of 32 bits.</summary>
    Float32,

    /// <summary>IEEE numbers of 64 bits.</summary>
    Float64,
}
