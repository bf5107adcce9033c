namespace Framing.Catalogue;

/// <summary>What a search key stands for, packed as in the table.</summary>
/// <param name="Packed">The row; bit 31 set for a named star, bit 30 if the key is its letter or number in a constellation.</param>
internal readonly record struct NameTarget(uint Packed)
{
    private const uint StarBit = 0x80000000;
    private const uint ConstellationBit = 0x40000000;

    /// <summary>True for a named star, false for a deep-sky object.</summary>
    public bool IsStar => (Packed & StarBit) != 0;

    /// <summary>True if the key is a letter or number in a constellation, such as alphalyr or 61cyg.</summary>
    public bool ByConstellation => (Packed & ConstellationBit) != 0;

    /// <summary>The row of the table of stars or of objects.</summary>
    public int Row => (int)(Packed & ~(StarBit | ConstellationBit));

    /// <summary>True if both are the same thing, whichever of its keys led there.</summary>
    public bool IsSameAs(NameTarget other) => IsStar == other.IsStar && Row == other.Row;
}
