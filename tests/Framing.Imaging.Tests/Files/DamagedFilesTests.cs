using Framing.Fits;

namespace Framing.Imaging.Tests;

/// <summary>Files that fuzzing found and that once hung or broke a door; each is kept.</summary>
public sealed class DamagedFilesTests
{
    [Fact]
    public void Read_FilesThatOnceBrokeADoor_AreAnsweredOrRefusedInOneLine()
    {
        var files = Directory.GetFiles(TestData.Path("damaged"));
        foreach (var path in files)
        {
            try
            {
                PictureFile.Inspect(path);
                PictureFile.Read(path, 1_000_000);
            }
            catch (UnreadableFileException problem)
            {
                Assert.DoesNotContain('\n', problem.Message);
            }
        }

        Assert.NotEmpty(files);
    }
}
