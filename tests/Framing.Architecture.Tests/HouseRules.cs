using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Framing.Architecture.Tests;

/// <summary>The rules of the house, checked on the files of a checkout. Each finding is one line that names the place.</summary>
internal static partial class HouseRules
{
    public const int MostLines = 500;

    /// <summary>The rooms and their floors; a room sees only rooms of lower floors.</summary>
    public static readonly IReadOnlyDictionary<string, int> Floors = new Dictionary<string, int>(
        StringComparer.Ordinal
    )
    {
        ["Framing.Sky"] = 0,
        ["Framing.Fits"] = 1,
        ["Framing.Jpeg"] = 1,
        ["Framing.Mosaics"] = 2,
        ["Framing.Imaging"] = 2,
        ["Framing.Catalogue"] = 2,
        ["Framing.Strategies"] = 3,
        ["Framing.Solving"] = 3,
        ["Framing.Rehearsal"] = 3,
        ["Framing.Planning"] = 4,
        ["Framing.Nights"] = 4,
        ["Framing.Drawing"] = 5,
        ["Framing.Export"] = 5,
        ["Framing.Workshop"] = 6,
        ["Framing.Web"] = 7,
        ["Framing.Cli"] = 8,
    };

    private static readonly string[] HiddenNames =
    [
        "Framing",
        "Sky",
        "Fits",
        "Catalogue",
        "Mosaics",
    ];

    private static readonly string[] PluginMaySee =
    [
        "Framing.Strategies",
        "Framing.Mosaics",
        "Framing.Sky",
    ];

    public static IReadOnlyList<string> References(string root)
    {
        var findings = new List<string>();
        foreach (var project in Files(root, "src", "*.csproj"))
        {
            var room = Path.GetFileNameWithoutExtension(project);
            if (!Floors.TryGetValue(room, out var floor))
            {
                findings.Add(
                    $"{Relative(root, project)}: the room {room} is not in the picture of the house."
                );
                continue;
            }

            foreach (var reference in ReferencesOf(project))
            {
                if (!Floors.TryGetValue(reference, out var other))
                {
                    // A plugin, of which PluginsApart speaks; or nothing that is in the house.
                    continue;
                }

                if (other >= floor)
                {
                    findings.Add(
                        FormattableString.Invariant(
                            $"{Relative(root, project)}: {room} (floor {floor}) may not see {reference} (floor {other})."
                        )
                    );
                }
            }
        }

        return findings;
    }

    public static IReadOnlyList<string> PluginsApart(string root)
    {
        var findings = new List<string>();
        foreach (
            var project in Files(root, "plugins", "*.csproj")
                .Concat(Files(root, "plugins", "*.props"))
        )
        {
            findings.AddRange(
                ReferencesOf(project)
                    .Where(reference => !PluginMaySee.Contains(reference, StringComparer.Ordinal))
                    .Select(reference =>
                        $"{Relative(root, project)}: a plugin may not see {reference}."
                    )
            );
        }

        foreach (var project in Files(root, "src", "*.csproj"))
        {
            findings.AddRange(
                XDocument
                    .Load(project)
                    .Descendants("ProjectReference")
                    .Where(item =>
                        ((string?)item.Attribute("Include"))?.Contains(
                            "plugins",
                            StringComparison.Ordinal
                        ) == true
                    )
                    .Select(item =>
                        $"{Relative(root, project)}: names the plugin {(string?)item.Attribute("Include")}; plugins come through plugins/Plugins.targets alone."
                    )
            );
        }

        return findings;
    }

    public static IReadOnlyList<string> OnePublicTypeAFile(string root)
    {
        var findings = new List<string>();
        foreach (var file in Sources(root, "src", "plugins"))
        {
            var names = PublicType()
                .Matches(File.ReadAllText(file))
                .Select(match => match.Groups["name"].Value)
                .Distinct(StringComparer.Ordinal)
                .ToList();
            var expected = Path.GetFileNameWithoutExtension(file).Split('.')[0];
            if (names.Count > 1)
            {
                findings.Add(
                    $"{Relative(root, file)}: more than one public type: {string.Join(", ", names)}."
                );
            }
            else if (names.Count == 1 && names[0] != expected)
            {
                findings.Add(
                    $"{Relative(root, file)}: holds {names[0]}; the file is named for its type."
                );
            }

            findings.AddRange(
                AnyType()
                    .Matches(File.ReadAllText(file))
                    .Select(match => match.Groups["name"].Value)
                    .Where(name => HiddenNames.Contains(name, StringComparer.Ordinal))
                    .Select(name =>
                        $"{Relative(root, file)}: a type named {name} would hide a namespace."
                    )
            );
        }

        return findings;
    }

    public static IReadOnlyList<string> Length(string root) =>
        [
            .. Sources(root, "src", "plugins", "tests", "samples")
                .Select(file => (File: file, Lines: File.ReadAllLines(file).Length))
                .Where(entry => entry.Lines > MostLines)
                .Select(entry =>
                    FormattableString.Invariant(
                        $"{Relative(root, entry.File)}: {entry.Lines} lines; past {MostLines} a file wants splitting."
                    )
                ),
        ];

    public static IReadOnlyList<string> Namespaces(string root)
    {
        var findings = new List<string>();
        foreach (var file in Sources(root, "src"))
        {
            var room = Relative(root, file).Split('/')[1];
            var match = Namespace().Match(File.ReadAllText(file));
            if (
                match.Success
                && match.Groups["name"].Value != room
                && !match.Groups["name"].Value.StartsWith(room + ".", StringComparison.Ordinal)
            )
            {
                findings.Add(
                    $"{Relative(root, file)}: namespace {match.Groups["name"].Value} does not belong to {room}."
                );
            }
        }

        return findings;
    }

    private static IEnumerable<string> ReferencesOf(string project) =>
        XDocument
            .Load(project)
            .Descendants("ProjectReference")
            .Select(item => (string?)item.Attribute("Include") ?? string.Empty)
            .Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')));

    private static IEnumerable<string> Sources(string root, params string[] folders) =>
        Files(root, folders, "*.cs");

    /// <summary>The files of some folders that are not made by a build.</summary>
    public static IEnumerable<string> Files(string root, string[] folders, string pattern) =>
        folders.SelectMany(folder => Files(root, folder, pattern));

    /// <summary>A path from the root of the checkout, with slashes.</summary>
    public static string Relative(string root, string file) =>
        Path.GetRelativePath(root, file).Replace('\\', '/');

    private static IEnumerable<string> Files(string root, string folder, string pattern)
    {
        var start = Path.Combine(root, folder);
        return !Directory.Exists(start)
            ? []
            : Directory
                .EnumerateFiles(start, pattern, SearchOption.AllDirectories)
                .Where(file => !Built().IsMatch(Relative(root, file)))
                .Order(StringComparer.Ordinal);
    }

    [GeneratedRegex(@"(?:^|/)(?:bin|obj)/", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Built();

    [GeneratedRegex(
        @"^public\s+(?:(?:static|sealed|abstract|readonly|partial|ref|unsafe)\s+)*(?:class|struct|interface|enum|delegate\s+\S+|record\s+struct|record\s+class|record)\s+(?<name>\w+)",
        RegexOptions.CultureInvariant | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex PublicType();

    [GeneratedRegex(
        @"^\s*(?:(?:public|internal|private|protected|file|static|sealed|abstract|readonly|partial|ref|unsafe)\s+)+(?:class|struct|interface|enum|record\s+struct|record\s+class|record)\s+(?<name>\w+)",
        RegexOptions.CultureInvariant | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex AnyType();

    [GeneratedRegex(
        @"^namespace\s+(?<name>[\w.]+)",
        RegexOptions.CultureInvariant | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex Namespace();
}
