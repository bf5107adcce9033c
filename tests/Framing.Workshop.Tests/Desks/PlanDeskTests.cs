namespace Framing.Workshop.Tests;

public sealed class PlanDeskTests : IDisposable
{
    private const string Plan = """
        # my plan
        title = "Desk"

        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63

        [target]
        names = ["IC 1805"] # the heart

        [night]
        date = 2026-12-05

        """;

    private readonly string folder = Directory.CreateTempSubdirectory("desk-").FullName;

    private string PlanPath => Path.Combine(folder, "plan.toml");

    private string UnsavedPath => PlanPath + PlanDesk.UnsavedSuffix;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Edit_OneValue_IsWorkedOutKeptBesideAndSavedWithEveryComment()
    {
        var desk = Open(Plan);
        var before = desk.Current;
        Assert.True(desk.IsSaved);

        var after = desk.Edit(before.Mark, [new("mosaic.grid", "[3, 2]")]);

        Assert.Equal(6, after.Plan.Panels.Count);
        Assert.NotEqual(before.Mark, after.Mark);
        Assert.False(desk.IsSaved);
        Assert.Equal(Plan, File.ReadAllText(PlanPath));
        Assert.Equal(after.Text, File.ReadAllText(UnsavedPath));
        Assert.Equal(Plan + "\n[mosaic]\ngrid = [3, 2]\n", after.Text);

        desk.Save(after.Mark);

        Assert.True(desk.IsSaved);
        Assert.Equal(after.Text, File.ReadAllText(PlanPath));
        Assert.False(File.Exists(UnsavedPath));
    }

    [Fact]
    public void Open_AfterACrash_GoesOnWithTheUnsavedText()
    {
        var desk = Open(Plan);
        var changed = desk.Edit(desk.Current.Mark, [new("rig.focal_length_mm", "400")]);

        var again = PlanDesk.Open(PlanPath, Shelf(), TimeProvider.System);

        Assert.True(again.WasRecovered);
        Assert.Equal(changed.Text, again.Current.Text);
        Assert.False(again.IsSaved);
    }

    [Fact]
    public void Open_BesideAnUnsavedTextThatIsNoPlan_TakesThePlan()
    {
        File.WriteAllText(UnsavedPath, "[rig\n");
        var desk = Open(Plan);
        Assert.False(desk.WasRecovered);
        Assert.Equal(Plan, desk.Current.Text);
    }

    [Fact]
    public void Put_AnEarlierText_TakesItBack()
    {
        var desk = Open(Plan);
        var first = desk.Current;
        var second = desk.Edit(first.Mark, [new("rig.focal_length_mm", "400")]);

        var back = desk.Put(second.Mark, first.Text);

        Assert.Equal(first.Mark, back.Mark);
        Assert.Equal(first.Report, back.Report);
        Assert.True(desk.IsSaved);
        Assert.False(File.Exists(UnsavedPath));
    }

    [Fact]
    public void Edit_OfAnOldState_IsToldAndNothingIsLost()
    {
        var desk = Open(Plan);
        var old = desk.Current.Mark;
        var newest = desk.Edit(old, [new("rig.focal_length_mm", "400")]);

        Assert.Throws<StalePlanException>(() =>
            desk.Edit(old, [new("rig.focal_length_mm", "135")])
        );
        Assert.Throws<StalePlanException>(() => desk.Put(old, Plan));
        Assert.Throws<StalePlanException>(() => desk.Save(old));

        Assert.Same(newest, desk.Current);
        Assert.Equal(Plan, File.ReadAllText(PlanPath));
    }

    [Theory]
    [InlineData("rig.focal_length_mm", "-3", "focal_length_mm")]
    [InlineData("target.names", "[\"no such thing\"]", "no such thing")]
    [InlineData("rotation.strategy", "\"to-outlin\"", "to-outline")]
    [InlineData("mosaic.colums", "3", "colums")]
    public void Edit_ToWhatCannotBe_IsRefusedAndChangesNothing(
        string key,
        string value,
        string word
    )
    {
        var desk = Open(Plan);
        var before = desk.Current;

        var refused = Assert.ThrowsAny<InputException>(() =>
            desk.Edit(before.Mark, [new("rig.pixel_um", "3.8"), new(key, value)])
        );

        Assert.Contains(word, refused.Message, StringComparison.Ordinal);
        Assert.Same(before, desk.Current);
        Assert.False(File.Exists(UnsavedPath));
    }

    [Fact]
    public void Current_AfterAnEditorSaved_IsTheNewText()
    {
        var desk = Open(Plan);
        var newer = Plan.Replace("250", "300", StringComparison.Ordinal);
        File.WriteAllText(PlanPath, newer);
        Assert.Equal(newer, desk.Current.Text);

        // While something here waits to be saved, the file is neither taken over nor written over.
        var mine = desk.Edit(desk.Current.Mark, [new("rig.focal_length_mm", "400")]);
        File.WriteAllText(PlanPath, Plan);
        Assert.Equal(mine.Text, desk.Current.Text);
        Assert.Throws<StalePlanException>(() => desk.Save(mine.Mark));
        Assert.Equal(Plan, File.ReadAllText(PlanPath));
        Assert.Equal(mine.Text, File.ReadAllText(UnsavedPath));
    }

    [Fact]
    public void Open_AFileThatIsNotThere_StartsAPlanThatIsWrittenOnSaveAlone()
    {
        var desk = PlanDesk.Open(PlanPath, Shelf(), TimeProvider.System);
        Assert.False(File.Exists(PlanPath));
        Assert.NotEmpty(desk.Current.Plan.Panels);
        Assert.False(desk.IsSaved);

        desk.Save(desk.Current.Mark);

        Assert.Equal(desk.Current.Text, File.ReadAllText(PlanPath));
    }

    [Fact]
    public void Edit_ToAFileElsewhere_ReadsNothingOutsideTheFolder()
    {
        var elsewhere = Directory.CreateTempSubdirectory("elsewhere-").FullName;
        try
        {
            var secret = Path.Combine(elsewhere, "secret.toml");
            File.WriteAllText(secret, "secret = 1\n");
            File.WriteAllText(
                Path.Combine(folder, "inside.toml"),
                "focal_length_mm = 300\nsensor_px = [4144, 2822]\npixel_um = 4.63\n"
            );
            File.CreateSymbolicLink(Path.Combine(folder, "link.toml"), secret);
            File.CreateSymbolicLink(Path.Combine(folder, "way"), elsewhere);
            var desk = Open(Plan);
            var mark = desk.Current.Mark;
            foreach (
                var name in (string[])
                    [
                        secret,
                        $"../{Path.GetFileName(elsewhere)}/secret.toml",
                        "link.toml",
                        "way/secret.toml",
                    ]
            )
            {
                var refused = Assert.ThrowsAny<InputException>(() => desk.Put(mark, WithRig(name)));
                Assert.DoesNotContain("secret =", refused.Message, StringComparison.Ordinal);
                Assert.Contains("may not be read", refused.Message, StringComparison.Ordinal);
            }

            Assert.Equal(
                300.0,
                desk.Put(mark, WithRig("inside.toml")).File.Rig.FocalLengthMillimetres
            );
        }
        finally
        {
            Directory.Delete(elsewhere, recursive: true);
        }
    }

    [Fact]
    public void Open_APlanThatNamesFilesElsewhere_ReadsThoseOn()
    {
        var samples = Path.Combine(TestFolders.Root, "samples", "two-panels.toml");
        var copy = Path.Combine(folder, "samples");
        Directory.CreateDirectory(copy);
        var demo = Path.Combine(folder, "demo-data");
        Directory.CreateDirectory(demo);
        foreach (
            var file in Directory
                .EnumerateFiles(Path.Combine(TestFolders.Root, "demo-data"), "*.*")
                .Where(file => Path.GetExtension(file) is ".toml" or ".csv")
        )
        {
            File.Copy(file, Path.Combine(demo, Path.GetFileName(file)));
        }

        var path = Path.Combine(copy, "plan.toml");
        File.Copy(samples, path);
        var desk = PlanDesk.Open(path, Shelf(), TimeProvider.System);

        var changed = desk.Edit(desk.Current.Mark, [new("mosaic.grid", "[3, 1]")]);

        Assert.Equal(3, changed.Plan.Panels.Count);
    }

    private static string WithRig(string file) =>
        $"rig = \"{file}\"\n" + Plan[Plan.IndexOf("[target]", StringComparison.Ordinal)..];

    private PlanDesk Open(string text)
    {
        File.WriteAllText(PlanPath, text);
        return PlanDesk.Open(PlanPath, Shelf(), TimeProvider.System);
    }

    private static PluginShelf Shelf() => PluginShelf.Open(PluginShelf.FolderBesideProgram);
}
