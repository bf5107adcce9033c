namespace Framing.Architecture.Tests;

public sealed class DocumentTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("house-").FullName;

    public static TheoryData<string> Documents =>
        [
            .. HouseRules
                .Files(HouseTests.Root, ["tests/reference", "samples"], "*.md")
                .Concat(Directory.EnumerateFiles(HouseTests.Root, "*.md"))
                .Select(path => HouseRules.Relative(HouseTests.Root, path)),
        ];

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Theory]
    [MemberData(nameof(Documents))]
    public void Documents_NameOnlyPathsThatExist(string document) =>
        Assert.Empty(DocumentRules.Paths(HouseTests.Root, document));

    [Fact]
    public void Guide_NamesEveryRoomAndEveryGenerator() =>
        Assert.Empty(DocumentRules.Gaps(HouseTests.Root));

    [Fact]
    public void Paths_ThatLeadNowhere_AreFound()
    {
        Write("src/Framing.Sky/A.cs", string.Empty);
        Write("Here.md", string.Empty);
        Write(
            "Guide.md",
            "`src/Framing.Sky`, `src/*/A.cs`, [this](Here.md), `Here.md`, `dotnet build`, `plan west/a.toml --size 1x1`, `north/`\n"
                + "`src/*/B.cs` and [that](There.md)\n"
        );
        Assert.Equal(
            [
                "Guide.md: west/a.toml does not exist.",
                "Guide.md: north/ does not exist.",
                "Guide.md: src/*/B.cs does not exist.",
                "Guide.md: There.md does not exist.",
            ],
            DocumentRules.Paths(root, "Guide.md")
        );
    }

    [Fact]
    public void Gaps_OfTheGuide_AreFound()
    {
        Write("src/Framing.Sky/A.cs", string.Empty);
        Write("src/Framing.Fits/A.cs", string.Empty);
        Write("tests/reference/moon/make.py", "import erfa\nfrom astropy.wcs import WCS\n");
        Write("tests/reference/sun/make.py", "import math\n");
        Write("tests/reference/tides/make.py", "import numpy as np\n");
        Write(
            "DEVELOPERS.md",
            "`Framing.Sky`\n`tests/reference/moon`: python3-erfa\n`tests/reference/sun`\n"
        );
        Assert.Equal(
            [
                "DEVELOPERS.md: the room Framing.Fits is not named.",
                "DEVELOPERS.md: tests/reference/moon needs python3-astropy, which its line does not say.",
                "DEVELOPERS.md: tests/reference/tides is not named.",
            ],
            DocumentRules.Gaps(root)
        );
    }

    private void Write(string path, string text)
    {
        var file = Path.Combine(root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }
}
