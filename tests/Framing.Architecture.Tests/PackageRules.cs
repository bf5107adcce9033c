using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Framing.Architecture.Tests;

/// <summary>Which room may use which package; each has one home, so that it can be changed there.</summary>
internal static class PackageRules
{
    /// <summary>The start of a package's name, which is the start of its namespaces too, and the rooms that may use it.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Homes = new Dictionary<
        string,
        string[]
    >(StringComparer.Ordinal)
    {
        ["SkiaSharp"] = ["Framing.Drawing", "Framing.Jpeg"],
        ["BitMiracle.LibTiff"] = ["Framing.Imaging"],
        ["SixLabors.ImageSharp"] = ["Framing.Imaging"],
        ["NetTopologySuite"] = ["Framing.Mosaics"],
        ["NodaTime"] = ["Framing.Nights"],
        ["Tomlyn"] = ["Framing.Workshop"],
        ["System.CommandLine"] = ["Framing.Cli"],
        ["CsvHelper"] = ["Framing.Export"],
        ["QRCoder"] = ["Framing.Web"],
    };

    /// <summary>What the program ships for each system without using it in code.</summary>
    private const string NativeAssets = "SkiaSharp.NativeAssets.";

    /// <summary>Findings in project files and sources of src/ and plugins/.</summary>
    public static IReadOnlyList<string> Findings(string root)
    {
        var findings = new List<string>();
        foreach (var project in HouseRules.Files(root, ["src", "plugins"], "*.csproj"))
        {
            var room = Path.GetFileNameWithoutExtension(project);
            findings.AddRange(
                XDocument
                    .Load(project)
                    .Descendants("PackageReference")
                    .Select(item => (string?)item.Attribute("Include") ?? string.Empty)
                    .Where(package =>
                        room is not ("Framing.Cli" or "Framing.Jpeg")
                        || !package.StartsWith(NativeAssets, StringComparison.Ordinal)
                    )
                    .Where(package => !IsAtHome(package, room))
                    .Select(package =>
                        $"{HouseRules.Relative(root, project)}: {room} may not use the package {package}."
                    )
            );
        }

        foreach (var file in HouseRules.Files(root, ["src", "plugins"], "*.cs"))
        {
            var room = HouseRules.Relative(root, file).Split('/')[1];
            var text = File.ReadAllText(file);
            findings.AddRange(
                Homes
                    .Keys.Where(name => !IsAtHome(name, room) && Uses(text, name))
                    .Select(name =>
                        $"{HouseRules.Relative(root, file)}: {room} may not use {name}."
                    )
            );
        }

        return findings;
    }

    private static bool IsAtHome(string package, string room) =>
        Homes
            .Where(home =>
                package == home.Key || package.StartsWith(home.Key + ".", StringComparison.Ordinal)
            )
            .All(home => home.Value.Contains(room, StringComparer.Ordinal));

    private static bool Uses(string text, string name) =>
        Regex.IsMatch(
            text,
            $@"^\s*(?:global\s+)?using\s[^;]*\b{Regex.Escape(name)}\b|\b{Regex.Escape(name)}\.[A-Z]\w*\b",
            RegexOptions.CultureInvariant | RegexOptions.Multiline,
            TimeSpan.FromSeconds(1)
        );
}
