using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace Framing.Fits.Tests;

/// <summary>Images packed in tiles by cfitsio's own packer, against what cfitsio reads of them (tests/reference/fits/tiles.py).</summary>
public sealed class TiledImagesTests
{
    [Fact]
    public void ReadSample_EveryPackedFile_IsWhatCfitsioReads()
    {
        var count = 0;
        foreach (var answer in TestData.Json("tiles", "answers.json").EnumerateArray())
        {
            var name = answer.GetProperty("file").GetString()!;
            using var file = FitsFile.Open(TestData.Path("tiles", name));
            var image = file.RequireImage();
            int[] shape =
            [
                .. answer.GetProperty("shape").EnumerateArray().Select(length => length.GetInt32()),
            ];
            Assert.Equal(shape[^1], image.Width);
            Assert.Equal(shape[^2], image.Height);
            Assert.Equal(shape.Length > 2 ? shape[0] : 1, image.Planes);
            Assert.Equal(12.5, file.Header.Number("CRVAL1"));
            Assert.EndsWith("card,", file.Header.Text("OBJECT"), StringComparison.Ordinal);

            var kind = answer.GetProperty("kind").GetString()!;
            Assert.True(
                answer.GetProperty("sha256").GetString() == Digest(image, kind),
                $"{name}: samples differ from cfitsio's"
            );
            count++;
        }

        Assert.Equal(84, count);
    }

    [Fact]
    public void ReadRows_InAnyOrder_GivesTheSamplesOfOneReading()
    {
        foreach (var name in (string[])["u16-ricetiles.fz.fits", "zeros-dithertiles.fz.fits"])
        {
            using var file = FitsFile.Open(TestData.Path("tiles", name));
            var image = file.RequireImage();
            var whole = new float[image.Width * image.Height];
            image.ReadRows(0, 0, whole);
            var random = new Random(5);
            var row = new float[image.Width];
            for (var i = 0; i < 200; i++)
            {
                var at = random.Next(image.Height);
                image.ReadRows(0, at, row);
                Assert.Equal(whole[(at * image.Width)..((at + 1) * image.Width)], row);
            }
        }
    }

    [Fact]
    public void Open_PackingThatIsNotRead_IsNamed() =>
        TestData.InFolder(folder =>
        {
            var bytes = File.ReadAllBytes(TestData.Path("tiles", "u16-rice.fz.fits"));
            Replace(bytes, "'RICE_1  '", "'PLIO_1  '");

            var problem = Assert.Throws<UnreadableFileException>(() =>
                FitsFile.Open("packed.fz.fits", bytes)
            );

            Assert.Equal(
                "packed.fz.fits: ZCMPTYPE: = PLIO_1; tiles packed with RICE_1, GZIP_1 or GZIP_2 are read; save it again with one of these or unpacked.",
                problem.Message
            );
        });

    [Theory]
    [InlineData("u16-rice.fz.fits")]
    [InlineData("u16-gzipwhole.fz.fits")]
    [InlineData("holes-gzip2dither.fz.fits")]
    public void Read_DamagedTiles_GiveSamplesOrOneLine(string name)
    {
        var good = File.ReadAllBytes(TestData.Path("tiles", name));
        var random = new Random(77);
        var refused = 0;
        for (var i = 0; i < 300; i++)
        {
            var bytes = good.ToArray();
            bytes[random.Next(2880, bytes.Length)] ^= (byte)(1 << random.Next(8));
            try
            {
                using var file = FitsFile.Open("damaged", bytes);
                if (file.Image is { } image)
                {
                    image.ReadRows(0, 0, new float[image.Width * image.Height]);
                }
            }
            catch (UnreadableFileException problem)
            {
                Assert.DoesNotContain('\n', problem.Message);
                refused++;
            }
        }

        Assert.InRange(refused, 1, 299);
    }

    private static void Replace(byte[] bytes, string old, string with)
    {
        var at = bytes.AsSpan().IndexOf(System.Text.Encoding.ASCII.GetBytes(old));
        Assert.True(at > 0);
        System.Text.Encoding.ASCII.GetBytes(with).CopyTo(bytes, at);
    }

    private static string Digest(FitsImage image, string kind)
    {
        using var stream = new MemoryStream();
        for (var plane = 0; plane < image.Planes; plane++)
        {
            for (var row = 0; row < image.Height; row++)
            {
                for (var column = 0; column < image.Width; column++)
                {
                    Write(stream, image.ReadSample(plane, column, row), kind);
                }
            }
        }

        return Convert.ToHexStringLower(SHA256.HashData(stream.ToArray()));
    }

    private static void Write(MemoryStream stream, SampleValue value, string kind)
    {
        var size = int.Parse(kind.AsSpan(1), CultureInfo.InvariantCulture);
        if (kind[0] == 'f')
        {
            // NumPy's one NaN has no sign; C#'s has.
            var number = value.IsDefined
                ? value.Number
                : BitConverter.UInt64BitsToDouble(0x7FF8UL << 48);
            stream.Write(
                size == 4 ? BitConverter.GetBytes((float)number) : BitConverter.GetBytes(number)
            );
            return;
        }

        Span<Int128> whole = [value.Whole!.Value];
        stream.Write(MemoryMarshal.AsBytes(whole)[..size]);
    }
}
