using Framing.Fits;

namespace Framing.Imaging.Tests;

/// <summary>Whatever becomes of the process that decodes, the caller gets the picture or one line.</summary>
public sealed class JpegProcessTests
{
    private const string Shell = "/bin/sh";

    [Fact]
    public void Read_TheDecoderOfTheProgram_GivesEveryRow()
    {
        var given = Read(JpegProcess.OfTheProgram(), "grey.jpg");

        Assert.True(given > 10);
    }

    [Theory]
    [InlineData("kill -SEGV $$", "the decoder broke down on them")]
    [InlineData("kill -ABRT $$", "the decoder broke down on them")]
    [InlineData("exit 134", "the decoder broke down on them")]
    [InlineData("cat >/dev/null; exit 3", "0 of ")]
    [InlineData("head -c 100 /dev/zero; exit 3", " rows can be read")]
    [InlineData("exec sleep 60", "the decoder gave nothing for ")]
    [InlineData("cat >/dev/null; while true; do :; done", "the decoder gave nothing for ")]
    public void Read_DecoderThatFails_IsOneLine(string does, string says)
    {
        var process = new JpegProcess(Shell, ["-c", does])
        {
            Patience = TimeSpan.FromSeconds(1),
            Standstill = TimeSpan.FromSeconds(
                does.StartsWith("exec sleep", StringComparison.Ordinal) ? 1 : 60
            ),
        };

        var problem = Assert.Throws<UnreadableFileException>(() => Read(process, "grey.jpg"));

        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    /// <summary>A decoder that waits for its turn on a busy machine is not one that hangs.</summary>
    [Fact]
    public void Read_DecoderThatSleepsLongerThanItMayWork_IsWaitedFor()
    {
        var process = new JpegProcess(
            Shell,
            ["-c", "cat >/dev/null; sleep 1; head -c 1000000 /dev/zero; exit 0"]
        )
        {
            Patience = TimeSpan.FromSeconds(0.5),
        };

        Assert.True(Read(process, "grey.jpg") > 10);
    }

    [Fact]
    public void Read_DecoderThatIsNotThere_SaysSo()
    {
        foreach (
            var process in (JpegProcess[])
                [new("/no/such/program", []), new(Shell, ["/no/such/decoder.dll"])]
        )
        {
            var problem = Assert.Throws<UnreadableFileException>(() => Read(process, "grey.jpg"));

            Assert.Contains(
                "framing-jpeg, does not start",
                problem.Message,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void Read_DecoderThatTakesTooMuch_IsStopped()
    {
        // Far less than the runtime needs by itself: the watch ends it, or the system refuses it the memory.
        var problem = Assert.Throws<UnreadableFileException>(() =>
            Read(JpegProcess.OfTheProgram(1 << 20), "grey.jpg")
        );

        Assert.Contains("the decoder ", problem.Message, StringComparison.Ordinal);
    }

    private static int Read(JpegProcess process, string file)
    {
        using var stream = File.OpenRead(TestData.Path("rasters", file));
        var layout = JpegLayout.Read(file, stream);
        var given = 0;
        process.Read(
            file,
            stream,
            layout,
            layout.Height,
            (row, samples) =>
            {
                Assert.Equal(given++, row);
                Assert.Equal(layout.Width * layout.Planes, samples.Length);
            }
        );
        return given;
    }
}
