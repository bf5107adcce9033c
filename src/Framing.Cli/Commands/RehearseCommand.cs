using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Framing.Cli.Terminals;
using Framing.Rehearsal;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Makes the frames a night would give, to practise with.</summary>
internal static class RehearseCommand
{
    public static Command Make(Terminal terminal)
    {
        var plan = new Argument<string?>("PLAN")
        {
            Description = "The plan file; without one the built-in example is rehearsed.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var panel = new Option<int?>("--panel")
        {
            Description =
                "Type this panel's coordinates; without it each panel gets a frame, or in an evening the mount stays.",
            HelpName = "N",
            CustomParser = result => (int?)Number(result, 1.0, 10_000.0, whole: true),
        };
        var error = new Option<string?>("--error")
        {
            Description =
                "An evening that goes on from call to call: this file keeps its hidden errors and how the mount stands.",
            HelpName = "FILE",
        };
        var output = new Option<string?>("--out")
        {
            Description = "Where the frames go; without it the evening's folder, or a new one.",
            HelpName = "DIR",
        };
        var typed = new Option<SkyDirection?>("--typed")
        {
            Description = "Coordinates typed into the hand control, as it expects them.",
            HelpName = "RA,DEC",
            CustomParser = Place,
        };
        var press = new Option<HeldKey[]>("--press")
        {
            Description =
                "A key held: its direction, the speed's label, seconds, such as east,4,7.5. May be given several times.",
            HelpName = "KEY,SPEED,SECONDS",
            Arity = ArgumentArity.OneOrMore,
            CustomParser = Presses,
        };
        var turn = Degrees(
            "--turn",
            "Turn the camera body by this, counter-clockwise seen from behind the camera.",
            "DEGREES",
            360.0
        );
        var raise = Degrees(
            "--raise",
            "Raise the polar axis (negative: lower it).",
            "ARCMIN",
            1800.0
        );
        var swing = Degrees(
            "--swing",
            "Swing the polar axis towards east (negative: west), about the vertical.",
            "ARCMIN",
            1800.0
        );
        var seed = new Option<double?>("--seed")
        {
            Description = "Another number, other errors, another noise (1 unless given).",
            HelpName = "N",
            CustomParser = result => Number(result, 0.0, 1e9, whole: true),
        };
        var date = new Option<DateOnly?>("--date")
        {
            Description = "The evening's date, in place of the plan's.",
            HelpName = "YYYY-MM-DD",
            CustomParser = CommonOptions.Date,
        };
        var exposure = new Option<double?>("--exposure")
        {
            Description = "Seconds (10 unless given).",
            HelpName = "S",
            CustomParser = result => Number(result, 0.001, 3600.0, whole: false),
        };
        var kind = new Option<FrameKind>("--kind")
        {
            Description = "What is taken: light, flat, dark or bias.",
            HelpName = "KIND",
            CustomParser = Kind,
        };
        var binning = new Option<int?>("--binning")
        {
            Description = "Pixels joined along each axis, in place of the plan's.",
            HelpName = "N",
            CustomParser = result => (int?)Number(result, 1.0, 16.0, whole: true),
        };
        var colour = new Option<string?>("--colour")
        {
            Description = "A colour filter over the pixels.",
            HelpName = "RGGB|BGGR|GRBG|GBRG",
            CustomParser = Colour,
        };
        var topDown = new Option<bool>("--top-down")
        {
            Description = "Store the top row first, as many cameras do.",
        };
        var clouds = new Option<double?>("--clouds")
        {
            Description = "Clouds: 0 none, 1 the thickest let nothing through.",
            HelpName = "PART",
            CustomParser = result => Number(result, 0.0, 1.0, whole: false),
        };
        var satellites = new Option<int?>("--satellites")
        {
            Description = "Satellites that cross each frame.",
            HelpName = "N",
            CustomParser = result => (int?)Number(result, 0.0, 100.0, whole: true),
        };
        var defocus = new Option<double?>("--defocus")
        {
            Description = "Out of focus: radius of the stars' discs in pixels.",
            HelpName = "PX",
            CustomParser = result => Number(result, 0.0, 100.0, whole: false),
        };
        var plugins = CommonOptions.Plugins();
        var json = CommonOptions.Json();
        var command = new Command(
            "rehearse",
            "Makes the frames a night would give, with hidden errors and the truth beside, to practise with."
        )
        {
            plan,
            panel,
            error,
            typed,
            press,
            turn,
            raise,
            swing,
            output,
            seed,
            date,
            exposure,
            kind,
            binning,
            colour,
            topDown,
            clouds,
            satellites,
            defocus,
            plugins,
            json,
        };
        CommonOptions.RefuseEmpty(error);
        CommonOptions.RefuseEmpty(output);
        CommonOptions.CheckPlan(plan, command);
        command.SetAction(parsed =>
        {
            var shelf = PluginFolders.Open(terminal, parsed.GetValue(plugins));
            var order = new RehearsalOrder
            {
                PlanPath = parsed.GetValue(plan),
                Panel = parsed.GetValue(panel),
                ErrorPath = parsed.GetValue(error) is { } file ? terminal.PathOf(file) : null,
                OutputFolder = parsed.GetValue(output) is { } folder
                    ? terminal.PathOf(folder)
                    : null,
                WorkingFolder = terminal.Folder,
                Typed = parsed.GetValue(typed),
                Presses = parsed.GetValue(press) ?? [],
                Turn = Angle.FromDegrees(parsed.GetValue(turn) ?? 0.0),
                Raise = Angle.FromArcminutes(parsed.GetValue(raise) ?? 0.0),
                SwingEast = Angle.FromArcminutes(parsed.GetValue(swing) ?? 0.0),
                Seed = (ulong)(parsed.GetValue(seed) ?? 1.0),
                Date = parsed.GetValue(date),
                ExposureSeconds = parsed.GetValue(exposure) ?? 10.0,
                Kind = parsed.GetValue(kind),
                Binning = parsed.GetValue(binning),
                ColourPattern = parsed.GetValue(colour),
                RowsTopDown = parsed.GetValue(topDown),
                Clouds = parsed.GetValue(clouds) ?? 0.0,
                Satellites = parsed.GetValue(satellites) ?? 0,
                DefocusPx = parsed.GetValue(defocus) ?? 0.0,
            };
            return RehearseText.Tell(
                terminal,
                RehearseJob.Run(order, shelf, terminal.Time),
                order,
                parsed.GetValue(json)
            );
        });
        return command;
    }

    private static Option<double?> Degrees(string name, string words, string unit, double most) =>
        new(name)
        {
            Description = words,
            HelpName = unit,
            CustomParser = result => Number(result, -most, most, whole: false),
        };

    private static double? Number(ArgumentResult result, double least, double most, bool whole)
    {
        var text = result.Tokens[0].Value;
        if (
            double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && number >= least
            && number <= most
            && (!whole || number == Math.Floor(number))
        )
        {
            return number;
        }

        result.AddError(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{NameOf(result)}: \"{text}\" is no {(whole ? "whole number" : "number")} from {least} to {most}."
            )
        );
        return null;
    }

    private static HeldKey[]? Presses(ArgumentResult result)
    {
        var presses = new List<HeldKey>();
        foreach (var token in result.Tokens)
        {
            var parts = token.Value.Split(',');
            if (
                parts.Length != 3
                || !Enum.TryParse<MountKey>(parts[0].Trim(), ignoreCase: true, out var key)
                || !char.IsLetter(parts[0].Trim()[0])
                || !double.TryParse(
                    parts[2].Trim(),
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture,
                    out var seconds
                )
                || seconds is not (> 0.0 and <= 3600.0)
            )
            {
                result.AddError(
                    $"--press: \"{token.Value}\" is no key held; write east, west, north or south, the speed's label, and seconds up to 3600, such as east,4,7.5."
                );
                return null;
            }

            presses.Add(new(key, parts[1].Trim(), seconds));
        }

        return [.. presses];
    }

    private static FrameKind Kind(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (
            Enum.TryParse<FrameKind>(text, ignoreCase: true, out var kind)
            && char.IsLetter(text[0])
            && Enum.IsDefined(kind)
        )
        {
            return kind;
        }

        result.AddError(
            $"--kind: \"{text}\" is no kind of frame; there are light, flat, dark and bias."
        );
        return default;
    }

    private static string? Colour(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (text is "RGGB" or "BGGR" or "GRBG" or "GBRG")
        {
            return text;
        }

        result.AddError(
            $"--colour: \"{text}\" is no colour filter; there are RGGB, BGGR, GRBG and GBRG."
        );
        return null;
    }

    private static SkyDirection? Place(ArgumentResult result)
    {
        if (
            CoordinateReader
                .ReadDirection(result.Tokens[0].Value)
                .TryGet(out var direction, out var error)
        )
        {
            return direction;
        }

        result.AddError($"--typed: {error}");
        return null;
    }

    private static string NameOf(ArgumentResult result) =>
        result.Parent is OptionResult option ? option.Option.Name : "the value";
}
