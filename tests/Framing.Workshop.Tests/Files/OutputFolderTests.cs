using FsCheck.Xunit;

namespace Framing.Workshop.Tests;

public sealed class OutputFolderTests : IDisposable
{
    private static readonly byte[] Mine = "{ mine }"u8.ToArray();
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("Two panels across the hearth", "two-panels-across-the-hearth-2026-12-05")]
    [InlineData("  Über den Bergen: Größe & Maß!  ", "ueber-den-bergen-groesse-mass-2026-12-05")]
    [InlineData("L'été à Noël – Œuvre n° 7", "lete-a-noel-oeuvre-n-7-2026-12-05")]
    [InlineData("Ζ Ηα / [O III]", "zeta-etaalpha-o-iii-2026-12-05")]
    [InlineData("Łódź Ångström Þór", "lodz-angstroem-thor-2026-12-05")]
    [InlineData("u\u0308ber", "uber-2026-12-05")]
    [InlineData("../../etc/passwd", "etc-passwd-2026-12-05")]
    [InlineData("CON", "con-2026-12-05")]
    [InlineData("★ ☾", "plan-2026-12-05")]
    [InlineData("", "plan-2026-12-05")]
    public void Name_OfATitle_IsPlainAscii(string title, string expected) =>
        Assert.Equal(expected, OutputFolder.Name(title, new(2026, 12, 5)));

    [Theory]
    [InlineData("A title", "a-title")]
    [InlineData("nul", "plan-nul")]
    [InlineData("", "plan")]
    public void Name_WithoutADate_IsTheTitleAlone(string title, string expected) =>
        Assert.Equal(expected, OutputFolder.Name(title, null));

    [Fact]
    public void Name_OfALongTitle_IsCutBetweenWords()
    {
        var name = OutputFolder.Name(
            string.Concat(Enumerable.Repeat("panels over the ridge ", 40)),
            null
        );
        Assert.Equal("panels-over-the-ridge-panels-over-the-ridge-panels-over-the", name);
        Assert.Equal(new string('x', 60), OutputFolder.Name(new string('x', 5000), null));
    }

    [Property]
    public void Name_OfAnyTitle_IsSafe(string? title)
    {
        var name = OutputFolder.Name(title ?? "", new(2026, 12, 5));
        Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*-2026-12-05$", name);
        Assert.True(name.Length <= 71);
    }

    [Fact]
    public void Choose_WhereNothingIs_IsTheName() =>
        Assert.Equal(folder["a"], OutputFolder.Choose(folder.Path, "a", Mine));

    [Fact]
    public void Choose_WhereTheSameReportIs_IsThatFolder()
    {
        Put("a", Mine);
        Assert.Equal(folder["a"], OutputFolder.Choose(folder.Path, "a", Mine));
    }

    [Fact]
    public void Choose_WhereOthersAre_IsTheFirstOfItsOwn()
    {
        Put("a", "{ other }"u8.ToArray());
        File.WriteAllText(folder["a-2"], "a file in place of the folder");
        Directory.CreateDirectory(folder["a-3"]);
        File.WriteAllText(folder["a-3/holiday.jpg"], "no plan at all");
        Put("a-4", "{ mime }"u8.ToArray());
        Assert.Equal(folder["a-5"], OutputFolder.Choose(folder.Path, "a", Mine));
        Put("a-5", Mine);
        Assert.Equal(folder["a-5"], OutputFolder.Choose(folder.Path, "a", Mine));
    }

    [Fact]
    public void Choose_OfAnEmptyFolder_TakesIt()
    {
        Directory.CreateDirectory(folder["a"]);
        Assert.Equal(folder["a"], OutputFolder.Choose(folder.Path, "a", Mine));
    }

    private void Put(string name, byte[] report)
    {
        Directory.CreateDirectory(folder[name]);
        File.WriteAllBytes(Path.Combine(folder[name], OutputFolder.Report), report);
    }
}
