using System.Text.RegularExpressions;

namespace Framing.Architecture.Tests;

/// <summary>What the contributor's guide and the other documents say of this checkout, held against it.</summary>
internal static partial class DocumentRules
{
    private const string Guide = "DEVELOPERS.md";

    private const string References = "tests/reference";

    /// <summary>What Python modules of the generators come with which Debian package.</summary>
    private static readonly IReadOnlyDictionary<string, string> DebianPackages = new Dictionary<
        string,
        string
    >(StringComparer.Ordinal)
    {
        ["astropy"] = "python3-astropy",
        ["erfa"] = "python3-erfa",
        ["numpy"] = "python3-numpy",
        ["scipy"] = "python3-scipy",
        ["shapely"] = "python3-shapely",
        ["PIL"] = "python3-pil",
        ["libcfitsio"] = "libcfitsio10",
    };

    /// <summary>Paths between backticks, and the targets of links, that lead nowhere.</summary>
    public static IReadOnlyList<string> Paths(string root, string document)
    {
        var text = File.ReadAllText(Path.Combine(root, document));
        return
        [
            .. Quoted()
                .Matches(text)
                .Concat(Link().Matches(text))
                .SelectMany(match => match.Groups["path"].Value.Split(' '))
                .Where(path => LooksLikeAPath().IsMatch(path))
                .Distinct(StringComparer.Ordinal)
                .Where(path => !IsThere(root, document, path))
                .Select(path => $"{document}: {path} does not exist."),
        ];
    }

    /// <summary>Rooms and generators that the guide does not name, and packages that a generator needs in silence.</summary>
    public static IReadOnlyList<string> Gaps(string root)
    {
        var lines = File.ReadAllLines(Path.Combine(root, Guide));
        var findings = new List<string>();
        findings.AddRange(
            Folders(root, "src")
                .Where(room =>
                    !lines.Any(line => line.Contains($"`{room}`", StringComparison.Ordinal))
                )
                .Select(room => $"{Guide}: the room {room} is not named.")
        );
        foreach (var topic in Folders(root, References))
        {
            var line = lines.FirstOrDefault(candidate =>
                candidate.Contains($"`{References}/{topic}`", StringComparison.Ordinal)
            );
            if (line is null)
            {
                findings.Add($"{Guide}: {References}/{topic} is not named.");
                continue;
            }

            var scripts = string.Concat(
                HouseRules
                    .Files(root, [$"{References}/{topic}"], "*.py")
                    .Select(script => File.ReadAllText(script) + "\n")
            );
            findings.AddRange(
                DebianPackages
                    .Where(package => Needs(scripts, package.Key))
                    .Where(package => !line.Contains(package.Value, StringComparison.Ordinal))
                    .Select(package =>
                        $"{Guide}: {References}/{topic} needs {package.Value}, which its line does not say."
                    )
            );
        }

        return findings;
    }

    private static IEnumerable<string> Folders(string root, string folder) =>
        Directory
            .GetDirectories(Path.Combine(root, folder))
            .Select(path => Path.GetFileName(path))
            .Where(name => Directory.EnumerateFiles(Path.Combine(root, folder, name)).Any())
            .Order(StringComparer.Ordinal);

    private static bool Needs(string scripts, string module) =>
        Regex.IsMatch(
            scripts,
            $@"^\s*(?:import|from)\s+{module}\b|\(""{module}\.so",
            RegexOptions.CultureInvariant | RegexOptions.Multiline,
            TimeSpan.FromSeconds(1)
        );

    /// <summary>A path counts from the root of the checkout or from the document's folder; * stands for any name.</summary>
    private static bool IsThere(string root, string document, string path) =>
        new[] { root, Path.GetDirectoryName(Path.Combine(root, document))! }.Any(start =>
            path.TrimEnd('/')
                .Split('/')
                .Aggregate<string, IEnumerable<string>>(
                    [start],
                    (found, name) =>
                        found
                            .Where(Directory.Exists)
                            .SelectMany(folder =>
                                name == ".."
                                    ? [Path.GetDirectoryName(folder)!]
                                    : Directory.EnumerateFileSystemEntries(folder, name)
                            )
                )
                .Any()
        );

    [GeneratedRegex("`(?<path>[^`\n]+)`", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\]\((?<path>[^)\s:]+)\)", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Link();

    /// <summary>A folder and a name, or a file at the root; not a command, a key or an output.</summary>
    [GeneratedRegex(
        @"^[\w.*-]+/[\w./*-]*$|^[\w-]+\.(?:md|sln|props|targets)$|^(?:LICENSE|NOTICE|global\.json)$",
        RegexOptions.CultureInvariant,
        1000
    )]
    private static partial Regex LooksLikeAPath();
}
