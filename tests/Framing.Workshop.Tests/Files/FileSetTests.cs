using System.Text;

namespace Framing.Workshop.Tests;

public sealed class FileSetTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Commit_OfANewFolder_PutsAllInPlace()
    {
        using var set = new FileSet(folder["a/b"]);
        set.Add("one.txt", Bytes("1"));
        set.Add("two.txt", stream => stream.Write(Bytes("2")));
        Assert.False(Directory.Exists(folder["a/b"]));
        set.Commit();
        Assert.Equal(["a", "a/b", "a/b/one.txt", "a/b/two.txt"], folder.Contents);
        Assert.Equal("1", File.ReadAllText(folder["a/b/one.txt"]));
    }

    [Fact]
    public void Commit_OfAFolderThatIsThere_ReplacesItsOwnFilesAlone()
    {
        File.WriteAllText(folder["one.txt"], "old");
        File.WriteAllText(folder["mine.txt"], "mine");
        using var set = new FileSet(folder.Path);
        set.Add("one.txt", Bytes("1"));
        set.Add("two.txt", Bytes("2"));
        Assert.Equal("old", File.ReadAllText(folder["one.txt"]));
        set.Commit();
        Assert.Equal(["mine.txt", "one.txt", "two.txt"], folder.Contents);
        Assert.Equal("1", File.ReadAllText(folder["one.txt"]));
        Assert.Equal("mine", File.ReadAllText(folder["mine.txt"]));
    }

    [Fact]
    public void Dispose_WithoutCommit_LeavesNothing()
    {
        using (var set = new FileSet(folder["a/b/c"]))
        {
            set.Add("one.txt", Bytes("1"));
        }

        Assert.Empty(folder.Contents);
    }

    [Fact]
    public void Add_ThatFails_LeavesNothing()
    {
        File.WriteAllText(folder["one.txt"], "old");
        using (var set = new FileSet(folder.Path))
        {
            set.Add("one.txt", Bytes("1"));
            Assert.Throws<InvalidOperationException>(() =>
                set.Add("two.txt", _ => throw new InvalidOperationException())
            );
        }

        Assert.Equal(["one.txt"], folder.Contents);
        Assert.Equal("old", File.ReadAllText(folder["one.txt"]));
    }

    [Fact]
    public void Commit_ThatFailsAtTheLastFile_TakesTheOthersBack()
    {
        File.WriteAllText(folder["one.txt"], "old");
        using (var set = new FileSet(folder.Path))
        {
            set.Add("one.txt", Bytes("1"));
            set.Add("two.txt", Bytes("2"));
            set.Add("three.txt", Bytes("3"));

            // A folder that has come in the way meanwhile, with something in it.
            Directory.CreateDirectory(folder["three.txt/inner"]);
            var refusal = Assert.Throws<InputException>(set.Commit);
            Assert.Equal(
                folder.Path + ": cannot be written, a folder stands where three.txt should be",
                refusal.Message
            );
        }

        Assert.Equal(["one.txt", "three.txt", "three.txt/inner"], folder.Contents);
        Assert.Equal("old", File.ReadAllText(folder["one.txt"]));
    }

    [Fact]
    public void FileSet_WhereAFileStands_IsRefused()
    {
        File.WriteAllText(folder["a"], "a file");
        Assert.Equal(
            folder["a"] + ": a file stands where the folder should be; name another folder",
            Assert.Throws<InputException>(() => new FileSet(folder["a"])).Message
        );
        Assert.StartsWith(
            folder["a/b"] + ": cannot be written, ",
            Assert.Throws<InputException>(() => new FileSet(folder["a/b"])).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(["a"], folder.Contents);
    }

    [Fact]
    public void FileSet_WhereNothingMayBeWritten_IsRefused()
    {
        Assert.SkipUnless(
            OperatingSystem.IsLinux(),
            "only Linux has a folder where nobody may write"
        );

        // /proc/self/ is one of those that refuse even the administrator.
        var refusal = Assert.Throws<InputException>(() => new FileSet("/proc/self/out"));
        Assert.StartsWith(
            "/proc/self/out: cannot be written, ",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain('\n', refusal.Message);
    }

    [Theory]
    [InlineData("a/b.txt")]
    [InlineData("a\\b.txt")]
    [InlineData("..")]
    [InlineData(" ")]
    [InlineData("ONE.txt")]
    public void Add_OfANameThatIsNoneOrThereAlready_Throws(string name)
    {
        using var set = new FileSet(folder.Path);
        set.Add("one.txt", Bytes("1"));
        Assert.Throws<ArgumentException>(() => set.Add(name, Bytes("2")));
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
