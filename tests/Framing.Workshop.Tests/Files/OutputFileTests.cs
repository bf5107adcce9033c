using System.Text;

namespace Framing.Workshop.Tests;

public sealed class OutputFileTests : IDisposable
{
    private static readonly byte[] New = Encoding.UTF8.GetBytes("new");
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Write_OfANewFile_LeavesThatFileAlone()
    {
        OutputFile.Write(folder["a.txt"], New);
        Assert.Equal("new", File.ReadAllText(folder["a.txt"]));
        Assert.Equal(["a.txt"], folder.Contents);
    }

    [Fact]
    public void Write_OverAnOldFile_ReplacesIt()
    {
        File.WriteAllText(folder["a.txt"], "something old and longer");
        OutputFile.Write(folder["a.txt"], New);
        Assert.Equal("new", File.ReadAllText(folder["a.txt"]));
        Assert.Equal(["a.txt"], folder.Contents);
    }

    [Fact]
    public void Write_ThatFailsHalfWay_LeavesTheOldFile()
    {
        File.WriteAllText(folder["a.txt"], "old");
        Assert.Throws<InvalidOperationException>(() =>
            OutputFile.Write(
                folder["a.txt"],
                stream =>
                {
                    stream.Write(New);
                    throw new InvalidOperationException();
                }
            )
        );
        Assert.Equal("old", File.ReadAllText(folder["a.txt"]));
        Assert.Equal(["a.txt"], folder.Contents);
    }

    [Fact]
    public void Write_OverAFolder_IsRefused()
    {
        Directory.CreateDirectory(folder["a.txt"]);
        var refusal = Assert.Throws<InputException>(() => OutputFile.Write(folder["a.txt"], New));
        Assert.Equal(
            folder["a.txt"] + ": a folder stands where the file should be; name another file",
            refusal.Message
        );
        Assert.Equal(["a.txt"], folder.Contents);
    }

    [Fact]
    public void Write_IntoAFolderThatIsNotThere_IsRefused()
    {
        var path = Path.Combine(folder["none"], "a.txt");
        var refusal = Assert.Throws<InputException>(() => OutputFile.Write(path, New));
        Assert.Equal(
            path + ": cannot be written, the folder it should be in is not there",
            refusal.Message
        );
    }
}
