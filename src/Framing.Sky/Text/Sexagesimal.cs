namespace Framing.Sky;

/// <summary>An amount of hours or degrees, split into whole, minutes, seconds and decimals of the last field written.</summary>
/// <param name="IsNegative">The sign of the whole amount; false where the amount rounds to zero.</param>
/// <param name="Whole">Hours or degrees.</param>
/// <param name="Minutes">0 to 59.</param>
/// <param name="Seconds">0 to 59; 0 in an amount split to minutes.</param>
/// <param name="Fraction">The decimals of the smallest field, as a whole number.</param>
/// <remarks>
/// Rounds to a whole count of the smallest unit first and splits that, so that 60 never appears; as SOFA's a2tf and a2af
/// do. A half goes away from zero.
/// </remarks>
internal readonly record struct Sexagesimal(
    bool IsNegative,
    long Whole,
    int Minutes,
    int Seconds,
    long Fraction
)
{
    /// <summary>More decimals than double precision holds in seconds of a full circle are refused.</summary>
    public const int MostDecimals = 9;

    /// <summary>Splits an amount down to seconds.</summary>
    /// <param name="amount">Hours or degrees.</param>
    /// <param name="decimals">Decimals of the seconds, 0 to 9.</param>
    /// <param name="most">The amount at which the count stops.</param>
    public static Sexagesimal ToSeconds(
        double amount,
        int decimals,
        double most = double.PositiveInfinity
    )
    {
        var perUnit = PowerOfTen(decimals);
        var count = Count(amount, 3600.0 * perUnit, most);
        var (units, fraction) = Math.DivRem(count, perUnit);
        var (minutes, seconds) = Math.DivRem(units, 60L);
        var (whole, minute) = Math.DivRem(minutes, 60L);
        return new(amount < 0.0 && count > 0, whole, (int)minute, (int)seconds, fraction);
    }

    /// <summary>Splits an amount down to minutes.</summary>
    /// <param name="amount">Hours or degrees.</param>
    /// <param name="decimals">Decimals of the minutes, 0 to 9.</param>
    /// <param name="most">The amount at which the count stops.</param>
    public static Sexagesimal ToMinutes(
        double amount,
        int decimals,
        double most = double.PositiveInfinity
    )
    {
        var perUnit = PowerOfTen(decimals);
        var count = Count(amount, 60.0 * perUnit, most);
        var (units, fraction) = Math.DivRem(count, perUnit);
        var (whole, minute) = Math.DivRem(units, 60L);
        return new(amount < 0.0 && count > 0, whole, (int)minute, 0, fraction);
    }

    /// <summary>Rounds an amount to decimals of its own.</summary>
    /// <param name="amount">Degrees.</param>
    /// <param name="decimals">Decimals, 0 to 9.</param>
    /// <param name="most">The amount at which the count stops.</param>
    public static Sexagesimal ToDecimals(
        double amount,
        int decimals,
        double most = double.PositiveInfinity
    )
    {
        var perUnit = PowerOfTen(decimals);
        var count = Count(amount, perUnit, most);
        var (whole, fraction) = Math.DivRem(count, perUnit);
        return new(amount < 0.0 && count > 0, whole, 0, 0, fraction);
    }

    private static long Count(double amount, double perWhole, double most) =>
        (long)
            Math.Round(Math.Min(Math.Abs(amount), most) * perWhole, MidpointRounding.AwayFromZero);

    private static long PowerOfTen(int decimals)
    {
        if (decimals is < 0 or > MostDecimals)
        {
            throw new ArgumentOutOfRangeException(
                nameof(decimals),
                decimals,
                "A coordinate is written with 0 to 9 decimals."
            );
        }

        var power = 1L;
        for (var i = 0; i < decimals; i++)
        {
            power *= 10L;
        }

        return power;
    }
}
