using System.Text;

namespace Framing.Workshop.Tests;

/// <summary>What was learned is written into plans without touching anything else.</summary>
public sealed class PlanEditorTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("framing-");

    private string Plan => Path.Combine(folder.FullName, "plan.toml");

    [Theory]
    [InlineData(
        "[mount]\ntype = \"wedge\" # mine\ndial_zero_deg = 3   # old\n\n[night]\nnights = 2\n",
        "[mount]\ntype = \"wedge\" # mine\ndial_zero_deg = 12.5   # old\n\n[night]\nnights = 2\n"
    )]
    [InlineData(
        "[mount]\ntype = \"wedge\" # mine\n\n[night]\nnights = 2\n",
        "[mount]\ntype = \"wedge\" # mine\ndial_zero_deg = 12.5 # learned\n\n[night]\nnights = 2\n"
    )]
    [InlineData("[mount]\n", "[mount]\ndial_zero_deg = 12.5 # learned\n")]
    [InlineData("[mount]", "[mount]\ndial_zero_deg = 12.5 # learned\n")]
    [InlineData("title = \"a\"\n", "title = \"a\"\n\n[mount]\ndial_zero_deg = 12.5 # learned\n")]
    [InlineData("title = \"a\"", "title = \"a\"\n\n[mount]\ndial_zero_deg = 12.5 # learned\n")]
    [InlineData(
        "[mount]\r\ntype = \"wedge\"\r\n",
        "[mount]\r\ntype = \"wedge\"\r\ndial_zero_deg = 12.5 # learned\r\n"
    )]
    [InlineData(
        "mount = { dial_zero_deg = 1, type = \"wedge\" }\n",
        "mount = { dial_zero_deg = 12.5, type = \"wedge\" }\n"
    )]
    [InlineData(
        "[mount]\nspeeds = [\n  { label = \"1\", x_sidereal = 1 },\n]\n[sky]\n",
        "[mount]\nspeeds = [\n  { label = \"1\", x_sidereal = 1 },\n]\ndial_zero_deg = 12.5 # learned\n[sky]\n"
    )]
    [InlineData(
        "# Die Höhe über dem Tal\n[mount]\nkeys = { east = \"►\", west = \"◄\", north = \"▲\", south = \"▼\" }\ndial_zero_deg = 1\n",
        "# Die Höhe über dem Tal\n[mount]\nkeys = { east = \"►\", west = \"◄\", north = \"▲\", south = \"▼\" }\ndial_zero_deg = 12.5\n"
    )]
    public void Set_InThePlan_ChangesTheValueAlone(string before, string after)
    {
        Write("plan.toml", before);
        Assert.Equal(Plan, PlanEditor.Set(Plan, "mount", [("dial_zero_deg", "12.5")]));
        Assert.Equal(after, Read("plan.toml"));
    }

    [Theory]
    [InlineData("focal_length_mm = 250 # as bought\n", "focal_length_mm = 251.3 # as bought\n")]
    [InlineData("[rig]\nfocal_length_mm = 250\n", "[rig]\nfocal_length_mm = 251.3\n")]
    [InlineData("pixel_um = 4\n", "pixel_um = 4\nfocal_length_mm = 251.3 # learned\n")]
    public void Set_InAFileThatThePlanNames_ChangesThatFile(string before, string after)
    {
        Write("plan.toml", "rig = \"lens.toml\"\n");
        Write("lens.toml", before);
        PlanEditor.Set(Plan, "rig", [("focal_length_mm", "251.3")]);
        Assert.Equal(after, Read("lens.toml"));
        Assert.Equal("rig = \"lens.toml\"\n", Read("plan.toml"));
    }

    [Fact]
    public void Set_WhereItCannotBeDoneSafely_SaysWhatToDoByHand()
    {
        const string text = "mount = { type = \"wedge\" }\n";
        Write("plan.toml", text);
        var refusal = Assert.Throws<InputException>(() =>
            PlanEditor.Set(Plan, "mount", [("dial_zero_deg", "12.5")])
        );
        Assert.Contains(
            "set dial_zero_deg = 12.5 by hand",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(text, Read("plan.toml"));
    }

    public void Dispose() => folder.Delete(recursive: true);

    private void Write(string name, string text) =>
        File.WriteAllText(Path.Combine(folder.FullName, name), text, new UTF8Encoding(false));

    private string Read(string name) => File.ReadAllText(Path.Combine(folder.FullName, name));
}
