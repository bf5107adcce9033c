using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Framing.Cli.Terminals;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Says where a frame points, by its stars.</summary>
internal static class SolveCommand
{
    // A telescope's finest pixel, and a fisheye's coarsest.
    private const double LeastScale = 0.05;
    private const double MostScale = 600.0;

    public static Command Make(Terminal terminal)
    {
        var frame = new Argument<string>("FRAME")
        {
            Description = "A FITS, PNG, JPEG or TIFF file that shows stars.",
        };
        frame.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var name }] && string.IsNullOrWhiteSpace(name))
            {
                result.AddError("the name of the frame is empty.");
            }
        });
        var near = new Option<string?>("--near")
        {
            Description =
                "Where it should point, within two field widths: a name, or J2000 coordinates. Without it the whole sky is searched.",
            HelpName = "NAME-or-RA,DEC",
        };
        CommonOptions.RefuseEmpty(near);
        var scale = new Option<double?>("--scale")
        {
            Description = "Seconds of arc per pixel, within 3 %, if you know.",
            HelpName = "ARCSEC",
            CustomParser = Scale,
        };
        var table = new Option<string?>("--stars")
        {
            Description =
                "A table of fainter stars for small fields: CSV or a FITS table with ra_deg, dec_deg, mag.",
            HelpName = "TABLE",
        };
        CommonOptions.RefuseEmpty(table);
        var write = new Option<bool>("--write")
        {
            Description =
                "Write the solution into the FITS header, or beside a picture of another kind.",
        };
        var json = CommonOptions.Json();
        var command = new Command(
            "solve",
            "Where a frame points: identifies its stars, by itself or with a hint."
        )
        {
            frame,
            near,
            scale,
            table,
            write,
            json,
        };
        command.SetAction(parsed =>
        {
            var start = terminal.Time.GetTimestamp();
            var name = parsed.GetValue(frame)!;
            var path = terminal.PathOf(name);
            var result = SolveJob.Run(
                new()
                {
                    Path = path,
                    Near = parsed.GetValue(near) is { } words
                        ? PlaceWords.Read("--near", words).Direction
                        : null,
                    Scale = parsed.GetValue(scale) is { } arcseconds
                        ? Angle.FromArcseconds(arcseconds)
                        : null,
                    Stars = parsed.GetValue(table) is { } stars
                        ? StarTableFile.Read(terminal.PathOf(stars))
                        : null,
                    Now = terminal.Time.GetUtcNow(),
                }
            );
            var written =
                parsed.GetValue(write) && result.Solution is not null
                    ? SolutionWriting.Write(path, result)
                    : null;
            var seconds = terminal.Time.GetElapsedTime(start).TotalSeconds;
            if (parsed.GetValue(json))
            {
                JsonOutput.Write(
                    terminal,
                    writer => SolveDocument.Write(writer, result, written, seconds)
                );
            }
            else if (result.Solution is not null)
            {
                SolveText.Write(terminal.Output, name, result, written);
            }

            if (result.WhyNot is { } why)
            {
                terminal.Error.WriteLine($"{name}: {why}.");
                return ExitCode.CannotBe;
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static double? Scale(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (
            double.TryParse(
                text,
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var arcseconds
            ) && arcseconds is >= LeastScale and <= MostScale
        )
        {
            return arcseconds;
        }

        result.AddError(
            FormattableString.Invariant(
                $"--scale: \"{text}\" is not between {LeastScale} and {MostScale} seconds of arc per pixel; it is 206.265 times the pixel in µm over the focal length in mm."
            )
        );
        return null;
    }
}
