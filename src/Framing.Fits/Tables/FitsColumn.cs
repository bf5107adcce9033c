namespace Framing.Fits;

/// <summary>A column of a table.</summary>
/// <remarks>Source: FITS Standard 4.0, sections 7.2.2 and 7.3.2.</remarks>
public sealed record FitsColumn
{
    internal FitsColumn() { }

    /// <summary>Which column, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Its name (TTYPE) without spaces at its ends; empty when it has none.</summary>
    public required string Name { get; init; }

    /// <summary>The unit of its values (TUNIT), or null.</summary>
    public required string? Unit { get; init; }

    /// <summary>What its cells hold.</summary>
    public required FitsColumnKind Kind { get; init; }

    /// <summary>Elements in a cell, 0 or more: characters of a text, bits; of a variable array the most that a cell holds, where told.</summary>
    public required int Count { get; init; }

    /// <summary>True when each cell holds an array of its own length (P and Q).</summary>
    public bool IsVariable { get; init; }

    /// <summary>The lengths of a cell's axes, the first varying fastest (TDIM); empty when cells are plain lists.</summary>
    public IReadOnlyList<int> Shape { get; init; } = [];

    /// <summary>TSCAL: value = zero + scale · stored.</summary>
    public double Scale { get; init; } = 1.0;

    /// <summary>TZERO.</summary>
    public double Zero { get; init; }

    /// <summary>The stored whole number that means "undefined" (TNULL), or null.</summary>
    public long? Null { get; init; }

    /// <summary>The first byte of its cell in a row.</summary>
    internal int Offset { get; init; }

    /// <summary>Bytes of its cell in a row.</summary>
    internal int Bytes { get; init; }

    /// <summary>True for descriptors of 64 bits (Q).</summary>
    internal bool IsWide { get; init; }

    /// <summary>In a text table: the text that means "undefined", or null.</summary>
    internal string? NullText { get; init; }

    /// <summary>In a text table: digits behind the point where no point is written; null in a binary table.</summary>
    internal int? Decimals { get; init; }

    /// <summary>Bytes of an element; 0 for bits.</summary>
    internal int ElementBytes =>
        Kind switch
        {
            FitsColumnKind.Logical or FitsColumnKind.UInt8 or FitsColumnKind.Text => 1,
            FitsColumnKind.Int16 => 2,
            FitsColumnKind.Int32 or FitsColumnKind.Float32 => 4,
            FitsColumnKind.Int64 or FitsColumnKind.Float64 or FitsColumnKind.Complex64 => 8,
            FitsColumnKind.Complex128 => 16,
            _ => 0,
        };

    /// <summary>Bytes that so many elements take.</summary>
    internal long BytesOf(long elements) =>
        Kind == FitsColumnKind.Bit ? (elements + 7) / 8 : elements * ElementBytes;

    /// <summary>How a stored number becomes a value.</summary>
    internal SampleScaling Scaling =>
        Kind switch
        {
            FitsColumnKind.UInt8 => new(8, Scale, Zero, Null),
            FitsColumnKind.Int16 => new(16, Scale, Zero, Null),
            FitsColumnKind.Int32 => new(32, Scale, Zero, Null),
            FitsColumnKind.Int64 => new(64, Scale, Zero, Null),
            FitsColumnKind.Float32 or FitsColumnKind.Complex64 => new(-32, Scale, Zero),
            _ => new(-64, Scale, Zero),
        };
}
