namespace Framing.Fits;

/// <summary>What kind of value a header card holds.</summary>
public enum FitsValueKind
{
    /// <summary>No value: a commentary card.</summary>
    None,

    /// <summary>A value indicator with nothing behind it: the keyword's value is not defined.</summary>
    Undefined,

    /// <summary>A character string.</summary>
    Text,

    /// <summary>T or F.</summary>
    Logical,

    /// <summary>A whole number.</summary>
    Integer,

    /// <summary>A number with a decimal point or an exponent (E or D).</summary>
    Real,

    /// <summary>A pair of numbers in brackets; kept as it is written.</summary>
    Complex,

    /// <summary>Something the standard does not know, kept as it is written.</summary>
    Unreadable,
}
