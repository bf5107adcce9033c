using System.Globalization;
using System.Text;

namespace Framing.Workshop;

/// <summary>Names the folder that a plan's report and pictures go to.</summary>
public static class OutputFolder
{
    /// <summary>The file by which a folder of ours is known.</summary>
    public const string Report = "report.json";

    private const int MostLetters = 60;
    private const int MostTries = 1000;

    // Names that one system keeps for its devices.
    private static readonly HashSet<string> Devices = new(StringComparer.Ordinal)
    {
        "con",
        "prn",
        "aux",
        "nul",
        "com1",
        "com2",
        "com3",
        "com4",
        "com5",
        "com6",
        "com7",
        "com8",
        "com9",
        "lpt1",
        "lpt2",
        "lpt3",
        "lpt4",
        "lpt5",
        "lpt6",
        "lpt7",
        "lpt8",
        "lpt9",
    };

    /// <summary>The name of the folder for a title and a date.</summary>
    /// <param name="title">The plan's title.</param>
    /// <param name="date">The evening's date; null when the plan names none.</param>
    /// <returns>
    /// Small ASCII letters, digits and hyphens: "Über den Bergen", 2026-12-05 make <c>ueber-den-bergen-2026-12-05</c>. A
    /// title without any letter that can be written so is called <c>plan</c>.
    /// </returns>
    public static string Name(string title, DateOnly? date)
    {
        ArgumentNullException.ThrowIfNull(title);
        var slug = Slug(title);
        return (slug.Length, date) switch
        {
            (0, null) => "plan",
            (0, { } day) => "plan" + Suffix(day),
            (_, { } day) => slug + Suffix(day),
            _ => Devices.Contains(slug) ? "plan-" + slug : slug,
        };
    }

    /// <summary>The folder to write to, so that no other plan's report is ever overwritten.</summary>
    /// <param name="parent">The folder in which it lies; empty for the current one.</param>
    /// <param name="name">Its name; see <see cref="Name"/>.</param>
    /// <param name="report">The bytes of the report to be written.</param>
    /// <returns>
    /// The folder of this name if it is not there, is empty, or holds this very report; else the first such of name-2,
    /// name-3, ….
    /// </returns>
    /// <exception cref="InputException">A thousand such folders are there already.</exception>
    public static string Choose(string parent, string name, ReadOnlySpan<byte> report)
    {
        for (var number = 1; number <= MostTries; number++)
        {
            var folder = Path.Combine(
                parent,
                number == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}-{number}")
            );
            if (IsFree(folder) || Holds(folder, report))
            {
                return folder;
            }
        }

        throw new InputException(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Path.Combine(parent, name)}: {MostTries} folders of this name hold other plans; name one with --out"
            )
        );
    }

    private static bool IsFree(string folder)
    {
        if (File.Exists(folder))
        {
            return false;
        }

        try
        {
            return !Directory.Exists(folder) || !Directory.EnumerateFileSystemEntries(folder).Any();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static bool Holds(string folder, ReadOnlySpan<byte> report)
    {
        var file = new FileInfo(Path.Combine(folder, Report));
        try
        {
            return file.Exists
                && file.Length == report.Length
                && File.ReadAllBytes(file.FullName).AsSpan().SequenceEqual(report);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string Suffix(DateOnly date) =>
        date.ToString("'-'yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Slug(string title)
    {
        var slug = new StringBuilder();
        foreach (var letter in title)
        {
            var ascii = AsciiLetters.Of(letter);
            if (ascii.Length > 0)
            {
                slug.Append(ascii);
            }
            else if (!AsciiLetters.IsSilent(letter) && slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        var whole = slug.ToString().Trim('-');
        if (whole.Length <= MostLetters)
        {
            return whole;
        }

        // Cut between words where that keeps most of it.
        var cut = whole.LastIndexOf('-', MostLetters);
        return whole[..(cut > MostLetters / 2 ? cut : MostLetters)].Trim('-');
    }
}
