namespace Framing.Cli.Tests;

public sealed class CommandLineTests
{
    [Theory]
    [InlineData("no command given")]
    [InlineData("did you mean plan?", "plann")]
    [InlineData("there is no command \"juggle\"", "juggle")]
    [InlineData("there is no option --siz; did you mean --size?", "plan", "--siz", "300x300")]
    [InlineData("there is no option --weird", "plan", "--weird")]
    [InlineData("one word too many", "plan", "a.toml", "b.toml")]
    [InlineData("\"3y4\" is no size", "plan", "--size", "3y4")]
    [InlineData("\"1600000x1000\" is no size", "plan", "--size", "1600000x1000")]
    [InlineData("\"2026-02-30\" is no date", "plan", "--date", "2026-02-30")]
    [InlineData("\"5 Dec\" is no date", "plan", "--date", "5 Dec")]
    [InlineData("\"dusk\" is no palette", "plan", "--palette", "dusk")]
    [InlineData("\"sta\" cannot be made up", "plan", "--made-up", "sta")]
    [InlineData("--out needs a value: --out DIR", "plan", "--out")]
    [InlineData("--out is given 2 times", "plan", "--out", "a", "--out", "b")]
    [InlineData("--out: the name is empty", "plan", "--out", "")]
    [InlineData("--backdrop: the name is empty", "plan", "--backdrop", " ")]
    [InlineData("--plugins: the name is empty", "strategies", "--plugins", "")]
    [InlineData("the name of the plan file is empty", "plan", "")]
    [InlineData("the name of the file is empty", "inspect", "")]
    [InlineData("the option before --json needs a value", "plan", "--date", "--json")]
    [InlineData("there is no option -o", "plan", "-o", "x")]
    [InlineData("find: WORDS is missing", "find")]
    [InlineData("there is no command \"juggle\"", "juggle", "--help")]
    [InlineData("@words: there is no such file", "plan", "@words")]
    [InlineData("\"1899-12-31\" is no date between 1900 and 2100", "plan", "--date", "1899-12-31")]
    public void Run_WithWordsThatCannotBeRead_EndsInOneLineAndTwo(
        string expected,
        params string[] args
    )
    {
        using var session = new Session();

        var outcome = session.Run(args);

        Assert.Equal(2, outcome.Code);
        Assert.Equal(string.Empty, outcome.Output);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(expected, line, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", line, StringComparison.Ordinal);
        Assert.Empty(session.Files());
    }

    [Fact]
    public void Run_WithVersion_PrintsIt()
    {
        using var session = new Session();
        var outcome = session.Run("--version");
        Assert.Equal(0, outcome.Code);
        Assert.Matches(@"^framing \d+\.\d+\.\d+\n$", outcome.Output);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("plan", "--help")]
    [InlineData("find", "--help")]
    [InlineData("strategies", "--help")]
    public void Run_WithHelp_Explains(params string[] args)
    {
        using var session = new Session();
        var outcome = session.Run(args);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("framing", outcome.Output, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("testhost", outcome.Output, StringComparison.OrdinalIgnoreCase);
    }
}
