using System.Text.RegularExpressions;

namespace Framing.Cli.Tests;

/// <summary>What the documents tell people to type works, and the samples run.</summary>
public sealed partial class DocumentTests
{
    public static TheoryData<string> Samples =>
        [
            .. Directory
                .EnumerateFiles(Checkout.At("samples"), "*.toml")
                .Select(path => "samples/" + Path.GetFileName(path))
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [InlineData("plan")]
    [InlineData("test")]
    public void Readme_HoldsOneCommandOfEachKind(string kind)
    {
        var lines = File.ReadAllLines(Checkout.At("README.md"));

        Assert.Single(lines, line => line == $"<!-- {kind} -->");
        var block = lines
            .SkipWhile(line => line != $"<!-- {kind} -->")
            .Skip(1)
            .TakeWhile(line => line != "```")
            .ToList();
        Assert.Equal("```sh", block[0]);
        Assert.StartsWith("dotnet ", Assert.Single(block[1..]), StringComparison.Ordinal);
        Assert.Equal(2, lines.Count(line => line.StartsWith("dotnet ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Readme_NamesWhatAPlanLeaves()
    {
        var text = File.ReadAllText(Checkout.At("README.md"));
        using var session = new Session();

        session.Run("plan");

        var left = session.Files().Select(file => Path.GetFileName(file)).ToList();
        Assert.Equal(10, left.Count);
        Assert.All(left, file => Assert.Contains($"`{file}`", text, StringComparison.Ordinal));
    }

    [Fact]
    public void Readme_PlanToStartFrom_RunsAsItIs()
    {
        using var session = new Session();
        var block = File.ReadAllLines(Checkout.At("README.md"))
            .SkipWhile(line => line != "<!-- own plan -->")
            .Skip(2)
            .TakeWhile(line => line != "```");
        var path = session.Write("my-plan.toml", string.Join('\n', block));

        var outcome = session.Run("plan", path);

        Assert.Equal(0, outcome.Code);
        Assert.Contains("Heart Nebula and Soul Nebula", outcome.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("README.md", 8)]
    [InlineData("DEVELOPERS.md", 2)]
    [InlineData("samples/strategy/README.md", 1)]
    [InlineData("samples/two-panels.toml", 1)]
    public void Commands_ThatADocumentNames_ExistWithTheirOptions(string document, int atLeast)
    {
        using var session = new Session();
        var commands = Command().Matches(File.ReadAllText(Checkout.At(document)));
        Assert.True(commands.Count >= atLeast, $"{document} names {commands.Count} commands.");

        Assert.All(
            commands,
            match =>
            {
                var word = match.Groups["word"].Value;
                var help = session.Run(word.StartsWith('-') ? ["--help"] : [word, "--help"]);
                Assert.Equal(0, help.Code);
                Assert.Matches(word.StartsWith('-') ? word : $@"Usage:\s+\S+ {word} ", help.Output);
                Assert.All(
                    match.Groups["option"].Captures,
                    option => Assert.Contains(option.Value, help.Output, StringComparison.Ordinal)
                );
            }
        );
    }

    [Fact]
    public void Samples_AreThere() => Assert.True(Samples.Count >= 4);

    [Theory]
    [MemberData(nameof(Samples))]
    public void Samples_RunAsTheyAre(string sample)
    {
        using var session = new Session();

        var outcome = session.Run("plan", Checkout.At(sample), "--out", "out");

        Assert.Equal(0, outcome.Code);
        Assert.Equal(string.Empty, outcome.Error);
        Assert.Contains("out/report.json", session.Files());
        Assert.Contains("out/panels.csv", session.Files());
        Assert.Contains("out/sky.png", session.Files());
    }

    /// <summary>The program's name, or what stands for it, or the start of a row in a table of commands; then the first word and the options of the same line.</summary>
    [GeneratedRegex(
        @"(?:(?:(?<![\w./-])framing|Framing\.Cli --|… --) |(?<=\n\| `)(?=[a-z]+[ `]))(?<word>-{0,2}[a-z]+)(?:[^\n`]*?(?<option>--[a-z-]+))*",
        RegexOptions.CultureInvariant,
        1000
    )]
    private static partial Regex Command();
}
