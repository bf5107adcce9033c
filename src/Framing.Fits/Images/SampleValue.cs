namespace Framing.Fits;

/// <summary>The value of one sample, exactly.</summary>
/// <param name="Number">The value, or NaN when the sample is not defined.</param>
/// <param name="Whole">The value as a whole number where samples are whole numbers; null otherwise.</param>
/// <remarks>A sample is not defined when it equals BLANK (whole numbers) or is NaN (IEEE numbers).</remarks>
public readonly record struct SampleValue(double Number, Int128? Whole)
{
    /// <summary>A sample that holds no value.</summary>
    public static SampleValue Undefined => new(double.NaN, null);

    /// <summary>True when the sample holds a value; an infinite one counts.</summary>
    public bool IsDefined => !double.IsNaN(Number);
}
