using Framing.Catalogue;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Reads a place of the sky as the user gives it: a name, or coordinates.</summary>
internal static class PlaceWords
{
    /// <summary>Reads a place.</summary>
    /// <param name="head">What the message begins with: the command or the option.</param>
    /// <param name="text">A name, or J2000 coordinates.</param>
    /// <returns>The object of the catalogue, if a name was given, and the direction.</returns>
    /// <exception cref="InputException">It is neither.</exception>
    public static (CatalogueEntry? Entry, SkyDirection Direction) Read(string head, string text)
    {
        var found = ObjectCatalogue.Embedded.Find(text);
        if (found.IsFound)
        {
            return (found.Entry, found.Entry.Direction);
        }

        if (CoordinateReader.ReadDirection(text).TryGet(out var direction, out var error))
        {
            return (null, direction);
        }

        // What begins with a digit or a sign is meant as coordinates.
        throw new InputException(
            text.Length > 0 && (char.IsAsciiDigit(text[0]) || text[0] is '+' or '-')
                ? $"{head}: {error}."
                : $"{head}: \"{text}\": {UnknownName.Problem(found)}"
        );
    }
}
