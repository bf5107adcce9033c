using System.Globalization;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>The words of contracts for what a check says.</summary>
internal static class CheckWords
{
    /// <summary>Less of the picture than this is not worth a word.</summary>
    private const double LeastPart = 0.0005;

    public static string Verdict(CheckVerdict verdict) =>
        verdict switch
        {
            CheckVerdict.Within => "within",
            CheckVerdict.NotYet => "not-yet",
            _ => "wrong-field",
        };

    public static string Step(CheckStep step) =>
        step switch
        {
            CheckStep.Turn => "turn",
            CheckStep.NewFrame => "new-frame",
            CheckStep.Move => "move",
            _ => "retype",
        };

    public static string Towards(MountDirection direction) =>
        direction switch
        {
            MountDirection.East => "east",
            MountDirection.West => "west",
            MountDirection.North => "north",
            _ => "south",
        };

    /// <summary>Which way the stars go, the larger part first: "right by 12 % of the picture's width and up by 3 % of its height".</summary>
    public static string Motion(StarMotion motion)
    {
        (double Fraction, string Plus, string Minus, string Side)[] parts =
        [
            (motion.RightFraction, "right", "left", "width"),
            (motion.UpFraction, "up", "down", "height"),
        ];
        string[] words =
        [
            .. parts
                .Where(part => Math.Abs(part.Fraction) >= LeastPart)
                .OrderByDescending(part => Math.Abs(part.Fraction))
                .Select(
                    (part, i) =>
                        $"{(part.Fraction > 0.0 ? part.Plus : part.Minus)} by {Percent(part.Fraction)} of {(i == 0 ? "the picture's" : "its")} {part.Side}"
                ),
        ];
        return words.Length == 0 ? "hardly at all" : string.Join(" and ", words);
    }

    /// <summary>Only the way: "right", "up and left"; the smaller part left out when it is far smaller.</summary>
    public static string Way(StarMotion motion)
    {
        var right = motion.RightFraction >= 0.0 ? "right" : "left";
        var up = motion.UpFraction >= 0.0 ? "up" : "down";
        var (across, along) = (Math.Abs(motion.RightFraction), Math.Abs(motion.UpFraction));
        const double farSmaller = 0.36;
        return along < across * farSmaller ? right
            : across < along * farSmaller ? up
            : $"{up} and {right}";
    }

    public static string Degrees(Angle angle) =>
        angle.Magnitude.Degrees.ToString(
            angle.Magnitude.Degrees < 9.95 ? "0.0" : "0",
            CultureInfo.InvariantCulture
        ) + "°";

    public static string Arcminutes(Angle angle) =>
        angle.Magnitude.Arcminutes < 120.0
            ? angle.Magnitude.Arcminutes.ToString("0.0", CultureInfo.InvariantCulture) + "′"
            : Degrees(angle);

    public static string Seconds(double seconds) =>
        seconds.ToString(seconds < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture) + " s";

    private static string Percent(double fraction)
    {
        var percent = Math.Abs(fraction) * 100.0;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{Math.Round(percent, percent < 9.95 ? 1 : 0)} %"
        );
    }
}
