namespace Framing.Architecture.Tests;

/// <summary>Each rule is shown to fail on a house that breaks it.</summary>
public sealed class HouseRulesTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("house-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Theory]
    [InlineData("Framing.Sky", "Framing.Fits")]
    [InlineData("Framing.Drawing", "Framing.Export")]
    [InlineData("Framing.Planning", "Framing.Nights")]
    [InlineData("Framing.Mosaics", "Framing.Workshop")]
    public void References_ToTheSameOrAHigherFloor_AreFound(string room, string seen)
    {
        Project("src", room, seen);

        var finding = Assert.Single(HouseRules.References(root));

        Assert.Contains($"{room} (floor", finding, StringComparison.Ordinal);
        Assert.Contains($"may not see {seen}", finding, StringComparison.Ordinal);
    }

    [Fact]
    public void References_ToALowerFloor_AreFine()
    {
        Project("src", "Framing.Workshop", "Framing.Drawing");
        Assert.Empty(HouseRules.References(root));
    }

    [Fact]
    public void References_OfAnUnknownRoom_AreFound()
    {
        Project("src", "Framing.Cellar", "Framing.Sky");
        Assert.Contains(
            "not in the picture",
            Assert.Single(HouseRules.References(root)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Plugins_ThatSeeARoom_AreFound()
    {
        Project("plugins", "RotationToOutline", "Framing.Workshop");
        Assert.Contains(
            "may not see Framing.Workshop",
            Assert.Single(HouseRules.PluginsApart(root)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Rooms_ThatSeeAPlugin_AreFound()
    {
        Write(
            "src/Framing.Cli/Framing.Cli.csproj",
            """<Project><ItemGroup><ProjectReference Include="../../plugins/A/A.csproj" /></ItemGroup></Project>"""
        );
        Assert.Single(HouseRules.PluginsApart(root));
    }

    [Theory]
    [InlineData("Framing.Workshop", "SkiaSharp")]
    [InlineData("Framing.Drawing", "SixLabors.ImageSharp")]
    [InlineData("Framing.Planning", "NetTopologySuite")]
    [InlineData("Framing.Drawing", "BitMiracle.LibTiff.NET")]
    [InlineData("Framing.Workshop", "SkiaSharp.NativeAssets.Win32")]
    public void Packages_AwayFromHome_AreFound(string room, string package)
    {
        Write(
            $"src/{room}/{room}.csproj",
            $"""<Project><ItemGroup><PackageReference Include="{package}" /></ItemGroup></Project>"""
        );
        Assert.Contains(
            $"{room} may not use the package {package}",
            Assert.Single(PackageRules.Findings(root)),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("Framing.Drawing", "SkiaSharp")]
    [InlineData("Framing.Jpeg", "SkiaSharp")]
    [InlineData("Framing.Cli", "SkiaSharp.NativeAssets.Win32")]
    [InlineData("Framing.Sky", "MathNet.Numerics")]
    public void Packages_AtHome_AreFine(string room, string package)
    {
        Write(
            $"src/{room}/{room}.csproj",
            $"""<Project><ItemGroup><PackageReference Include="{package}" /></ItemGroup></Project>"""
        );
        Assert.Empty(PackageRules.Findings(root));
    }

    [Theory]
    [InlineData("using SkiaSharp;\n")]
    [InlineData("using Tree = Tomlyn.Syntax;\n")]
    [InlineData("internal sealed class One { private CsvHelper.CsvWriter writer; }\n")]
    public void Packages_UsedWithoutBeingNamed_AreFound(string source)
    {
        Write("src/Framing.Planning/One.cs", source);
        Assert.Single(PackageRules.Findings(root));
    }

    [Theory]
    [InlineData("public sealed class One { }\n\npublic enum Two { }\n")]
    [InlineData("public sealed class Other { }\n")]
    [InlineData("public readonly record struct Other(int X);\n")]
    [InlineData("internal static class Sky { }\n")]
    public void Types_OutOfPlace_AreFound(string source)
    {
        Write("src/Framing.Sky/One.cs", source);
        Assert.Single(HouseRules.OnePublicTypeAFile(root));
    }

    [Theory]
    [InlineData("public sealed class One\n{\n    private sealed class Two { }\n}\n")]
    [InlineData("/// <summary>public class Two</summary>\npublic static partial class One { }\n")]
    public void Types_InPlace_AreFine(string source)
    {
        Write("src/Framing.Sky/One.cs", source);
        Assert.Empty(HouseRules.OnePublicTypeAFile(root));
    }

    [Fact]
    public void Files_ThatAreTooLong_AreFound()
    {
        Write(
            "tests/A/Long.cs",
            string.Join('\n', Enumerable.Repeat("//", HouseRules.MostLines + 1))
        );
        Write("tests/A/Short.cs", string.Join('\n', Enumerable.Repeat("//", HouseRules.MostLines)));
        Assert.Contains(
            "tests/A/Long.cs: 501 lines",
            Assert.Single(HouseRules.Length(root)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Namespaces_OfAnotherRoom_AreFound()
    {
        Write("src/Framing.Sky/A.cs", "namespace Framing.Fits;\n");
        Write("src/Framing.Sky/B.cs", "namespace Framing.Sky.Inner;\n");
        Write("src/Framing.Sky/obj/C.cs", "namespace Framing.Fits;\n");
        Assert.Single(HouseRules.Namespaces(root));
    }

    private void Project(string folder, string name, string reference) =>
        Write(
            $"{folder}/{name}/{name}.csproj",
            $"""<Project><ItemGroup><ProjectReference Include="../{reference}/{reference}.csproj" /></ItemGroup></Project>"""
        );

    private void Write(string path, string text)
    {
        var file = Path.Combine(root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }
}
