namespace Framing.Planning;

/// <summary>Says a chance as people count: 99 times in 100.</summary>
public static class ChanceText
{
    /// <summary>How often something happens.</summary>
    /// <param name="chance">The chance, 0 to 1.</param>
    /// <returns>Such as "99 times in 100", "997 times in 1000" or "less than once in 100".</returns>
    /// <remarks>Never "100 times in 100" of what can fail, and never "0 times" of what can happen.</remarks>
    public static string Times(double chance) =>
        chance switch
        {
            >= 0.9995 => "more than 999 times in 1000",
            >= 0.995 => FormattableString.Invariant($"{Math.Round(chance * 1000.0)} times in 1000"),
            < 0.005 => "less than once in 100",
            < 0.015 => "once in 100",
            _ => FormattableString.Invariant($"{Math.Round(chance * 100.0)} times in 100"),
        };
}
