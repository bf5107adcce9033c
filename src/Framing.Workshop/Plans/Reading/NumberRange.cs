using System.Globalization;

namespace Framing.Workshop;

/// <summary>What a number of the plan may be, and how that is said.</summary>
/// <param name="Unit">The unit in words, in the plural ("degrees"); "a number" where there is none.</param>
/// <param name="Least">The least value.</param>
/// <param name="Most">The greatest value.</param>
/// <param name="LeastAllowed">True when the least value itself is allowed.</param>
/// <param name="MostAllowed">True when the greatest value itself is allowed.</param>
internal sealed record NumberRange(
    string Unit,
    double Least,
    double Most,
    bool LeastAllowed = true,
    bool MostAllowed = true
)
{
    /// <summary>For example "degrees from -90 to 90", "millimetres, more than 0 and at most 100000".</summary>
    public string Words =>
        (LeastAllowed, MostAllowed) switch
        {
            (true, true) => Say($"{Unit} from {Least} to {Most}"),
            (true, false) => Say($"{Unit} from {Least} to less than {Most}"),
            (false, true) => Say($"{Unit}, more than {Least} and at most {Most}"),
            _ => Say($"{Unit}, more than {Least} and less than {Most}"),
        };

    /// <summary>A range that leaves its lower end out.</summary>
    public static NumberRange Above(string unit, double least, double most) =>
        new(unit, least, most, LeastAllowed: false);

    /// <summary>True when a number lies in the range; never for NaN.</summary>
    public bool Holds(double number) =>
        (LeastAllowed ? number >= Least : number > Least)
        && (MostAllowed ? number <= Most : number < Most);

    private static string Say(FormattableString words) =>
        words.ToString(CultureInfo.InvariantCulture);
}
