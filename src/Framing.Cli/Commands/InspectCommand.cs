using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Text.Json;
using Framing.Cli.Terminals;
using Framing.Imaging;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Says what a picture or frame is, and maps a point either way.</summary>
internal static class InspectCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A FITS, PNG, JPEG or TIFF file." };
        var pixel = new Option<PixelPosition?>("--pixel")
        {
            Description =
                "Where this pixel lies on the sky, and its value. Counted as FITS does: the first is 1,1.",
            HelpName = "X,Y",
            CustomParser = Pixel,
        };
        var sky = new Option<SkyDirection?>("--sky")
        {
            Description = "Where in the picture this place appears: degrees, or hours and degrees.",
            HelpName = "RA,DEC",
            CustomParser = result => CommonOptions.Direction(result, "--sky"),
        };
        file.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var name }] && string.IsNullOrWhiteSpace(name))
            {
                result.AddError("the name of the file is empty.");
            }
        });
        var json = CommonOptions.Json();
        var command = new Command(
            "inspect",
            "What a picture or frame is: size, samples, date, rig, place on the sky."
        )
        {
            file,
            pixel,
            sky,
            json,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var facts = PictureFile.Inspect(path);
            var asked = parsed.GetValue(pixel);
            var point = asked is { } place ? PixelAnswer.Of(path, facts, place) : null;
            var found = parsed.GetValue(sky) is { } direction
                ? SkyAnswer.Of(facts, direction)
                : null;
            if (parsed.GetValue(json))
            {
                JsonOutput.Write(
                    terminal,
                    writer => InspectDocument.Write(writer, facts, point, found)
                );
            }
            else
            {
                InspectText.Write(terminal.Output, facts, point, found);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static PixelPosition? Pixel(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var parts = text.Split(',');
        if (parts.Length == 2 && Number(parts[0]) is { } x && Number(parts[1]) is { } y)
        {
            return new PixelPosition(x, y);
        }

        result.AddError(
            $"--pixel: \"{text}\" is no place in a picture; write X,Y such as 120.5,33."
        );
        return null;
    }

    private static double? Number(string text) =>
        double.TryParse(
            text.Trim(),
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out var number
        ) && double.IsFinite(number)
            ? number
            : null;
}
