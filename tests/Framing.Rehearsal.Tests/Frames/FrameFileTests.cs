using Framing.Imaging;

namespace Framing.Rehearsal.Tests.Frames;

public sealed class FrameFileTests
{
    [Fact]
    public void Write_Frame_ReadsBackWithItsFactsAndNoSolution()
    {
        var small = Recipes.Small(320, 240);
        var frame = Recipes.Make(
            small with
            {
                Camera = small.Camera with { Binning = 2, RowsTopDown = true },
                Lens = small.Lens with { NominalFocalLengthMillimetres = 247.0 },
                ObjectName = "IC 1805",
            }
        );
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".fits");
        try
        {
            FrameFile.Write(path, frame);

            var facts = PictureFile.Inspect(path);
            Assert.Equal((160, 120, 1), (facts.Width, facts.Height, facts.Planes));
            Assert.True(facts.RowsTopDown);
            Assert.Null(facts.Coordinates);
            Assert.All(
                facts.Warnings,
                warning => Assert.Contains("ROWORDER", warning, StringComparison.Ordinal)
            );
            Assert.Equal("IC 1805", facts.Rig.Object);
            Assert.Equal(247.0, facts.Rig.FocalLengthMillimetres);
            Assert.Equal(9.26, facts.Rig.PixelMicrometres);
            Assert.Equal(2, facts.Rig.Binning);
            Assert.Equal(10.0, facts.Rig.ExposureSeconds);
            Assert.Equal(new DateTimeOffset(Recipes.Evening), facts.Rig.Start);
            var picture = PictureFile.Read(path);
            Assert.Equal(frame.Samples.Select(v => (float)v), picture.Plane(0).ToArray());
        }
        finally
        {
            File.Delete(path);
        }
    }
}
