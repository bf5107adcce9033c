namespace Framing.Fits;

/// <summary>What the cells of a table's column hold.</summary>
public enum FitsColumnKind
{
    /// <summary>True, false or undefined (L).</summary>
    Logical,

    /// <summary>Single bits (X).</summary>
    Bit,

    /// <summary>Whole numbers of 8 bits from 0 (B).</summary>
    UInt8,

    /// <summary>Whole numbers of 16 bits (I).</summary>
    Int16,

    /// <summary>Whole numbers of 32 bits (J); also the whole numbers of a text table.</summary>
    Int32,

    /// <summary>Whole numbers of 64 bits (K).</summary>
    Int64,

    /// <summary>Characters (A).</summary>
    Text,

    /// <summary>IEEE numbers of 32 bits (E).</summary>
    Float32,

    /// <summary>IEEE numbers of 64 bits (D); also the real numbers of a text table.</summary>
    Float64,

    /// <summary>Pairs of IEEE numbers of 32 bits (C): two numbers an element.</summary>
    Complex64,

    /// <summary>Pairs of IEEE numbers of 64 bits (M): two numbers an element.</summary>
    Complex128,
}
