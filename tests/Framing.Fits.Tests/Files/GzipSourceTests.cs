using System.IO.Compression;

namespace Framing.Fits.Tests;

public sealed class GzipSourceTests
{
    [Fact]
    public void Open_EveryCasePacked_ReadsAsItDoesUnpacked()
    {
        var count = 0;
        foreach (var path in Directory.GetFiles(TestData.Path("images"), "*.fits"))
        {
            var bytes = File.ReadAllBytes(path);
            using var plain = FitsFile.Open(path);
            using var packed = FitsFile.Open("packed", Packed(bytes));
            var (one, other) = (plain.RequireImage(), packed.RequireImage());
            for (var plane = one.Planes - 1; plane >= 0; plane--)
            {
                for (var row = one.Height - 1; row >= 0; row--)
                {
                    var values = new float[one.Width];
                    var others = new float[one.Width];
                    one.ReadRows(plane, row, values);
                    other.ReadRows(plane, row, others);
                    Assert.Equal(values, others);
                }
            }

            count++;
        }

        Assert.Equal(42, count);
    }

    [Fact]
    public void Open_CutShort_IsRefusedInOneLineUnlessAllSamplesAreThere()
    {
        var plain = File.ReadAllBytes(TestData.Path("images", "16-3.fits"));
        using var whole = FitsFile.Open("plain", plain);
        var wanted = whole.RequireImage().ReadSample(2, 6, 4);
        var bytes = Packed(plain);
        var refused = 0;
        for (var length = 2; length < bytes.Length; length++)
        {
            try
            {
                using var file = FitsFile.Open("packed", bytes.AsMemory(0, length));
                Assert.Equal(wanted, file.RequireImage().ReadSample(2, 6, 4));
            }
            catch (UnreadableFileException problem)
            {
                Assert.DoesNotContain('\n', problem.Message);
                refused++;
            }
        }

        // Only the fill behind the samples, and gzip's own end, may be missing.
        Assert.InRange(refused, bytes.Length - 40, bytes.Length - 2);
    }

    [Fact]
    public void Open_WrongChecksum_IsRefused()
    {
        var bytes = Packed(File.ReadAllBytes(TestData.Path("images", "16-3.fits")));
        bytes[^6] ^= 1;

        var problem = Assert.Throws<UnreadableFileException>(() => FitsFile.Open("packed", bytes));

        Assert.Contains("damaged", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_PackedText_SaysThatItIsNoFitsFile()
    {
        var problem = Assert.Throws<UnreadableFileException>(() =>
            FitsFile.Open("packed", Packed("a letter home, long enough"u8.ToArray()))
        );

        Assert.Contains("begins with", problem.Message, StringComparison.Ordinal);
    }

    private static byte[] Packed(byte[] bytes)
    {
        using var stream = new MemoryStream();
        using (var packed = new GZipStream(stream, CompressionLevel.Fastest))
        {
            packed.Write(bytes);
        }

        return stream.ToArray();
    }
}
