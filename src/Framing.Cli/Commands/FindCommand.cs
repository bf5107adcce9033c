using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Framing.Catalogue;
using Framing.Cli.Terminals;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Looks an object or a star up.</summary>
internal static class FindCommand
{
    public static Command Make(Terminal terminal)
    {
        var words = new Argument<string[]>("WORDS")
        {
            Description =
                "A name as you would write it: heart nebula, ic1805, sh2 129, m 31, vega.",
            Arity = ArgumentArity.OneOrMore,
        };
        var json = CommonOptions.Json();
        var command = new Command(
            "find",
            "Looks an object or a star up: place, size, angle, other names."
        )
        {
            words,
            json,
        };
        command.SetAction(parsed =>
        {
            var name = string.Join(' ', parsed.GetValue(words)!);
            var found = ObjectCatalogue.Embedded.Find(name);
            if (!found.IsFound)
            {
                throw new InputException($"find: \"{name}\": {UnknownName.Problem(found)}");
            }

            if (parsed.GetValue(json))
            {
                JsonOutput.Write(terminal, writer => Document(writer, found.Entry));
            }
            else
            {
                Text(terminal.Output, found.Entry);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static void Text(TextWriter output, CatalogueEntry entry)
    {
        output.WriteLine(entry.Label);
        output.WriteLine($"  place    {Place(entry.Direction)}  (J2000)");
        if (entry is DeepSkyObject thing)
        {
            output.WriteLine($"  kind     {ObjectWords.Kind(thing.Type)}");
            output.WriteLine($"  size     {Size(thing)}");
            if (thing.MiddleOfExtent != thing.Direction)
            {
                output.WriteLine(
                    $"  middle   {Place(thing.MiddleOfExtent)}  (of its extent; this is what a plan frames)"
                );
            }

            if (thing.VMagnitude is { } magnitude)
            {
                output.WriteLine(
                    FormattableString.Invariant($"  light    magnitude {magnitude:0.0}")
                );
            }

            if (thing.Members.Count > 0)
            {
                output.WriteLine($"  made of  {string.Join(", ", thing.Members)}");
            }
        }
        else if (entry is NamedStar star)
        {
            output.WriteLine(
                FormattableString.Invariant($"  light    magnitude {star.Star.VMagnitude:0.00}")
            );
        }

        var others = entry
            .Names.Where(name =>
                name != entry.Name && !entry.Label.EndsWith($"({name})", StringComparison.Ordinal)
            )
            .ToList();
        if (others.Count > 0)
        {
            output.WriteLine($"  also     {string.Join(", ", others)}");
        }
    }

    private static string Place(SkyDirection direction) =>
        EntryText.RightAscension(direction.RightAscension, EntryFormat.HmsDms)
        + "  "
        + EntryText.Declination(direction.Declination, EntryFormat.HmsDms);

    private static string Size(DeepSkyObject thing)
    {
        if (thing.Major is not { } major)
        {
            return "not known";
        }

        var size =
            thing.Minor is { } minor && minor != major
                ? FormattableString.Invariant($"{Arcminutes(major)} × {Arcminutes(minor)}′")
                : FormattableString.Invariant($"{Arcminutes(major)}′ across");
        var axis = thing.MajorAxis is { } angle
            ? FormattableString.Invariant($", long side at position angle {angle.Degrees:0}°")
            : string.Empty;
        return size + axis + Quality(thing.SizeQuality);
    }

    private static string Arcminutes(Angle angle) =>
        angle.Arcminutes.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Quality(SizeQuality quality) =>
        quality switch
        {
            SizeQuality.Approximate => " (roughly)",
            SizeQuality.Unverified => " (not verified)",
            _ => string.Empty,
        };

    private static void Document(Utf8JsonWriter writer, CatalogueEntry entry)
    {
        writer.WriteString("id", entry.Id);
        writer.WriteString("name", entry.Name);
        writer.WriteStartObject("j2000");
        Number(writer, "raDeg", entry.Direction.RightAscension.Degrees);
        Number(writer, "decDeg", entry.Direction.Declination.Degrees);
        writer.WriteEndObject();
        writer.WriteStartArray("names");
        foreach (var name in entry.Names)
        {
            writer.WriteStringValue(name);
        }

        writer.WriteEndArray();
        switch (entry)
        {
            case DeepSkyObject thing:
                writer.WriteString("kind", ObjectWords.Kind(thing.Type));
                Number(writer, "majorArcmin", thing.Major?.Arcminutes);
                Number(writer, "minorArcmin", thing.Minor?.Arcminutes);
                Number(writer, "positionAngleDeg", thing.MajorAxis?.Degrees);
                Number(writer, "vMag", thing.VMagnitude);
                writer.WriteString(
                    "sizeQuality",
                    thing.SizeQuality.ToString().ToLower(CultureInfo.InvariantCulture)
                );
                writer.WriteString("source", thing.Source);
                break;
            case NamedStar star:
                writer.WriteString("kind", "star");
                Number(writer, "vMag", star.Star.VMagnitude);
                Number(writer, "bMinusV", star.Star.BMinusV);
                break;
            default:
                break;
        }
    }

    private static void Number(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, Math.Round(number, 6, MidpointRounding.AwayFromZero));
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
