using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Framing.Drawing;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>Options that several commands share.</summary>
internal static class CommonOptions
{
    public static Option<string?> Plugins()
    {
        var option = new Option<string?>("--plugins")
        {
            Description = "A folder with more strategy plugins.",
            HelpName = "DIR",
        };
        RefuseEmpty(option);
        return option;
    }

    /// <summary>Refuses an empty name: a script whose variable is not set would write or read somewhere else.</summary>
    public static void RefuseEmpty(Option<string?> option) =>
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var word }] && string.IsNullOrWhiteSpace(word))
            {
                result.AddError(
                    $"{option.Name}: the name is empty; give {option.Name} {option.HelpName}."
                );
            }
        });

    /// <summary>Refuses a plan file without a name, and an unknown option that would pass for one.</summary>
    public static void CheckPlan(Argument<string?> plan, Command command) =>
        plan.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: ['-', ..] word }])
            {
                result.AddError(WrongWords.UnknownOption(word, command));
            }
            else if (result.Tokens is [{ Value: var name }] && string.IsNullOrWhiteSpace(name))
            {
                result.AddError("the name of the plan file is empty.");
            }
        });

    public static Option<bool> Json() =>
        new("--json") { Description = "Print exactly one JSON document instead of text." };

    public static Option<PictureSize> Size() =>
        new("--size")
        {
            Description = "Size of the picture in pixels (1600x1000 unless given).",
            HelpName = "WxH",
            CustomParser = ReadSize,
        };

    public static Option<PicturePalette> Palette() =>
        new("--palette")
        {
            Description = "Colours of the picture: day, or night (red on black).",
            HelpName = "day|night",
            CustomParser = ReadPalette,
        };

    /// <summary>A number within a range, both ends included.</summary>
    public static Option<double?> Number(
        string name,
        string helpName,
        string description,
        double least,
        double most
    ) =>
        new(name)
        {
            Description = description,
            HelpName = helpName,
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                if (
                    double.TryParse(
                        text.Replace('\u2212', '-'),
                        NumberStyles.Float,
                        CultureInfo.InvariantCulture,
                        out var number
                    )
                    && number >= least
                    && number <= most
                )
                {
                    return number;
                }

                result.AddError(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{name}: \"{text}\" is not a number from {least} to {most}."
                    )
                );
                return null;
            },
        };

    /// <summary>A whole number from 1.</summary>
    public static int? Count(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number >= 1
        )
        {
            return number;
        }

        result.AddError($"{Named(result)}: \"{text}\" is no whole number from 1.");
        return null;
    }

    /// <summary>A place on the sky, as typed.</summary>
    public static SkyDirection? Direction(ArgumentResult result, string option)
    {
        if (
            CoordinateReader
                .ReadDirection(result.Tokens[0].Value)
                .TryGet(out var direction, out var error)
        )
        {
            return direction;
        }

        result.AddError($"{option}: {error}");
        return null;
    }

    private static PictureSize ReadSize(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (PictureSize.TryParse(text, out var size))
        {
            return size;
        }

        result.AddError(
            $"--size: \"{text}\" is no size; write columns x rows, 320x200 to 8000x8000, such as 1600x1000."
        );
        return default;
    }

    private static PicturePalette ReadPalette(ArgumentResult result)
    {
        switch (result.Tokens[0].Value)
        {
            case "day":
                return PicturePalette.Day;
            case "night":
                return PicturePalette.Night;
            default:
                result.AddError(
                    $"--palette: \"{result.Tokens[0].Value}\" is no palette; there are day and night."
                );
                return default;
        }
    }

    private static string Named(ArgumentResult result) =>
        result.Parent is OptionResult option ? option.Option.Name : result.Argument.Name;

    /// <summary>Reads the date of an evening.</summary>
    public static DateOnly? Date(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (
            DateOnly.TryParseExact(
                text,
                "yyyy-MM-dd",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var date
            ) && date.Year is >= 1900 and <= 2100
        )
        {
            return date;
        }

        result.AddError(
            $"--date: \"{text}\" is no date between 1900 and 2100 written as YYYY-MM-DD, such as 2026-12-05."
        );
        return null;
    }
}
