namespace Framing.Architecture.Tests;

public sealed class HouseTests
{
    internal static string Root { get; } = FindRoot();

    [Fact]
    public void Rooms_SeeOnlyLowerFloors() => Assert.Empty(HouseRules.References(Root));

    [Fact]
    public void Plugins_SeeTheContractAlone_AndNobodySeesThem() =>
        Assert.Empty(HouseRules.PluginsApart(Root));

    [Fact]
    public void Packages_StayAtHome() => Assert.Empty(PackageRules.Findings(Root));

    [Fact]
    public void Files_HoldOnePublicTypeEach() => Assert.Empty(HouseRules.OnePublicTypeAFile(Root));

    [Fact]
    public void Files_StayShort() => Assert.Empty(HouseRules.Length(Root));

    [Fact]
    public void Namespaces_BelongToTheirRoom() => Assert.Empty(HouseRules.Namespaces(Root));

    [Fact]
    public void Rooms_AreThere() =>
        Assert.True(Directory.GetDirectories(Path.Combine(Root, "src"), "Framing.*").Length >= 8);

    private static string FindRoot()
    {
        for (
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            folder is not null;
            folder = folder.Parent
        )
        {
            if (File.Exists(Path.Combine(folder.FullName, "Framing.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException(
            $"Framing.sln was not found above {AppContext.BaseDirectory}."
        );
    }
}
