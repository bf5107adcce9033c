using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Checks one value against the setting that declares it.</summary>
internal static class SettingValue
{
    /// <summary>Takes a value of the plan file.</summary>
    /// <param name="setting">The declaration.</param>
    /// <param name="value">A long, int, double, string or bool as the file has it.</param>
    /// <param name="taken">A double, string or bool.</param>
    /// <returns>False when the value is of another kind, not finite, out of range or none of the choices.</returns>
    public static bool TryTake(
        StrategySettingAttribute setting,
        object? value,
        [NotNullWhen(true)] out object? taken
    )
    {
        taken = (setting.Kind, value) switch
        {
            (SettingKind.Number, long number) => (object?)InRange(setting, number),
            (SettingKind.Number, int number) => InRange(setting, number),
            (SettingKind.Number, double number) => InRange(setting, number),
            (SettingKind.Text, string text) => IsChoice(setting, text) ? text : null,
            (SettingKind.Flag, bool flag) => flag,
            _ => null,
        };
        return taken is not null;
    }

    /// <summary>Takes the default that the plugin declares, written as in a plan file.</summary>
    public static bool TryParseDefault(
        StrategySettingAttribute setting,
        [NotNullWhen(true)] out object? value
    )
    {
        object? written = setting.Kind switch
        {
            SettingKind.Number => double.TryParse(
                setting.Default,
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var number
            )
                ? number
                : null,
            SettingKind.Flag => setting.Default switch
            {
                "true" => true,
                "false" => false,
                _ => null,
            },
            _ => setting.Default,
        };
        return TryTake(setting, written, out value);
    }

    /// <summary>What is allowed, in words: "a number from 0 to less than 1".</summary>
    public static string Wanted(StrategySettingAttribute setting) =>
        setting.Kind switch
        {
            SettingKind.Number => "a number" + RangeWords(setting),
            SettingKind.Flag => "true or false",
            _ when Choices(setting) is { Count: > 0 } choices => string.Join(
                " or ",
                choices.Select(choice => $"\"{choice}\"")
            ),
            _ => "a text",
        };

    /// <summary>The texts allowed; empty when any is.</summary>
    public static IReadOnlyList<string> Choices(StrategySettingAttribute setting) =>
        setting.Choices?.Split(
            '|',
            StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
        ) ?? [];

    /// <summary>A value as the plan file would write it.</summary>
    public static string Written(object? value) =>
        value switch
        {
            string text => $"\"{OneLine.Of(text)}\"",
            bool flag => flag ? "true" : "false",
            double number when double.IsNaN(number) => "nan",
            double number when double.IsInfinity(number) => number > 0.0 ? "inf" : "-inf",
            IDictionary or IEnumerable<KeyValuePair<string, object>> => "a table",
            IEnumerable => "a list",
            IFormattable other => OneLine.Of(other.ToString(null, CultureInfo.InvariantCulture)),
            _ => OneLine.Of(value?.ToString()),
        };

    private static double? InRange(StrategySettingAttribute setting, double number) =>
        double.IsFinite(number)
        && number >= setting.Least
        && number <= setting.Most
        && number < setting.Below
            ? number
            : null;

    private static bool IsChoice(StrategySettingAttribute setting, string text) =>
        Choices(setting) is var choices
        && (choices.Count == 0 || choices.Contains(text, StringComparer.Ordinal));

    private static string RangeWords(StrategySettingAttribute setting)
    {
        var from = double.IsFinite(setting.Least) ? Written(setting.Least) : null;
        var below = double.IsFinite(setting.Below) && setting.Below <= setting.Most;
        var to =
            below ? "less than " + Written(setting.Below)
            : double.IsFinite(setting.Most) ? Written(setting.Most)
            : null;
        return (from, to) switch
        {
            (null, null) => "",
            (_, null) => $", {from} or more",
            (null, _) => below ? $", {to}" : $", {to} or less",
            _ => $" from {from} to {to}",
        };
    }
}
