using System.Globalization;
using Framing.Planning;

namespace Framing.Workshop;

/// <summary>Keeps what was learned of a mount where the plan has its mount: in the mount's file, or in the plan.</summary>
internal static class MountFile
{
    /// <summary>A change of a rate by less than this part is no news.</summary>
    private const double LeastChange = 0.002;

    /// <summary>Writes what has changed.</summary>
    /// <param name="planPath">The plan.</param>
    /// <param name="known">The mount as it was known.</param>
    /// <param name="learned">The mount as it is known now.</param>
    /// <param name="messages">Takes what was learned, in words.</param>
    /// <returns>The mount as it is known now.</returns>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public static MountHandling Keep(
        string planPath,
        MountHandling known,
        MountHandling learned,
        List<string> messages
    )
    {
        var values = new List<(string, string)>();
        var words = new List<string>();
        var (ra, dec) = (learned.RightAscension, learned.Declination);
        var rateRa = Change(known.RightAscension.RateFactor, ra.RateFactor);
        var rateDec = Change(known.Declination.RateFactor, dec.RateFactor);
        if (rateRa || rateDec)
        {
            values.Add(
                ("rate_factor", $"[{Number(ra.RateFactor, 3)}, {Number(dec.RateFactor, 3)}]")
            );
        }

        if (rateRa)
        {
            words.Add(Rate("right ascension", ra.RateFactor));
        }

        if (rateDec)
        {
            words.Add(Rate("declination", dec.RateFactor));
        }

        if (
            ra.Backlash != known.RightAscension.Backlash
            || dec.Backlash != known.Declination.Backlash
        )
        {
            values.Add(
                (
                    "backlash_arcmin",
                    $"[{Number(ra.Backlash.Arcminutes, 1)}, {Number(dec.Backlash.Arcminutes, 1)}]"
                )
            );
            words.Add(
                $"the play of the gear is {Number(dec.Backlash.Arcminutes, 1)}′ in declination"
            );
        }

        if (learned.Keys != known.Keys)
        {
            var keys = learned.Keys;
            values.Add(
                (
                    "keys",
                    $"{{ east = {Quoted(keys.East)}, west = {Quoted(keys.West)}, north = {Quoted(keys.North)}, south = {Quoted(keys.South)} }}"
                )
            );
            words.Add(
                learned.Keys.North != known.Keys.North
                    ? $"{keys.North} moves the telescope north, {keys.South} south"
                    : $"{keys.East} moves the telescope east, {keys.West} west"
            );
        }

        if (values.Count > 0)
        {
            var path = PlanEditor.Set(planPath, "mount", values);
            messages.Add($"Learned: {string.Join("; ", words)} (kept in {path}).");
        }

        return learned;
    }

    /// <summary>A number as TOML takes it.</summary>
    public static string Number(double value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero)
            .ToString("0.0##", CultureInfo.InvariantCulture);

    private static bool Change(double from, double to) => Math.Abs((to / from) - 1.0) > LeastChange;

    private static string Rate(string axis, double factor) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the keys of {axis} run at {factor * 100.0:0} % of what their labels promise"
        );

    private static string Quoted(string text) =>
        "\""
        + text.Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("\"", "\\\"", StringComparison.Ordinal)
        + "\"";
}
