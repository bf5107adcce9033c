using System.Globalization;
using System.IO.Compression;
using Framing.Sky;

namespace Framing.Fits.Tests;

public sealed class SolutionUpdateTests
{
    private static readonly TanWorldCoordinates Place = new(
        new(30.5, 20.5),
        SkyDirection.FromDegrees(301.25, 40.5),
        new(-2.5e-4, 1.0e-5, 1.0e-5, 2.5e-4)
    );

    private static FitsHeaderBuilder Solution =>
        new FitsHeaderBuilder().AddSolution(Place).AddComment("Solved from 41 stars.");

    private static FitsHeaderBuilder Bent =>
        new FitsHeaderBuilder()
            .AddSolution(
                ProjectedWorldCoordinates.TanSip(
                    Place.ReferencePixel,
                    Place.ReferenceDirection,
                    Place.Matrix,
                    new(
                        new(2, (p, q) => (p, q) == (2, 0) ? 1e-5 : 0.0),
                        new(3, (p, q) => (p, q) == (0, 3) ? -1e-7 : 0.0)
                    )
                ),
                60,
                40
            )
            .AddComment("Solved from 41 stars.");

    /// <summary>Every case with a picture that opens: what the file held stays, and the judges find no more than before.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Write_EveryCase_KeepsTheRestAndAddsNoWarning(bool bent) =>
        TestData.InFolder(folder =>
        {
            var pairs = new List<(string Before, string After)>();
            foreach (var file in Directory.GetFiles(TestData.Path("cases"), "*.fits"))
            {
                if (!HasPicture(file))
                {
                    continue;
                }

                var path = Path.Combine(folder, Path.GetFileName(file));
                File.Copy(file, path);
                SolutionUpdate.Write(path, bent ? Bent : Solution);
                AssertKept(file, path);
                var (warnings, errors, _) = Judge.Verify(file);
                var (warningsAfter, errorsAfter, text) = Judge.Verify(path);
                Assert.True(warningsAfter <= warnings && errorsAfter <= errors, file + text);
                pairs.Add((file, path));
            }

            Assert.Equal(29, pairs.Count);
            // cfitsio reads no file whose last block is not filled up.
            var readable = pairs
                .Where(pair => Path.GetFileName(pair.Before) != "unpadded_tail.fits")
                .ToList();
            var before = Judge.ReadBack([.. readable.Select(pair => pair.Before)]);
            var after = Judge.ReadBack([.. readable.Select(pair => pair.After)]);
            foreach (var (was, now) in before.Zip(after))
            {
                foreach (var reader in (string[])["astropy", "cfitsio"])
                {
                    Assert.Equal(
                        was.GetProperty(reader).GetProperty("sha256").GetString(),
                        now.GetProperty(reader).GetProperty("sha256").GetString()
                    );
                    Assert.Equal(
                        301.25,
                        now.GetProperty(reader)
                            .GetProperty("keys")
                            .GetProperty("CRVAL1")
                            .GetDouble(),
                        1e-12
                    );
                }
            }
        });

    [Fact]
    public void Write_OverAnOldSolution_TellsWhatWentAndLeavesNoneOfIt() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "solved.fits");
            File.Copy(TestData.Path("cases", "sip_forward_only.fits"), path);

            var change = SolutionUpdate.Write(path, Solution);

            Assert.Contains(change.Removed, card => card.Keyword == "A_ORDER");
            Assert.Contains(change.Removed, card => card.Keyword == "CRVAL1");
            Assert.Equal(16, change.Added.Count);
            using var file = FitsFile.Open(path);
            Assert.False(file.Header.Has("A_ORDER"));
            Assert.Equal(301.25, file.Header.Number("CRVAL1")!.Value, 1e-12);
            Assert.Contains(
                file.Header.Cards,
                card => card.Keyword == "COMMENT" && card.Comment == "Solved from 41 stars."
            );
        });

    [Fact]
    public void Write_Twice_ChangesNothingMore() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "solved.fits");
            File.Copy(TestData.Path("cases", "u16_extremes.fits"), path);
            var solution = new FitsHeaderBuilder().AddSolution(Place);
            SolutionUpdate.Write(path, solution);
            var once = File.ReadAllBytes(path);

            SolutionUpdate.Write(path, solution);

            Assert.Equal(once, File.ReadAllBytes(path));
            Assert.Single(Directory.GetFiles(folder));
        });

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Write_WithAChecksum_KeepsARightOneRightAndAWrongOneAsItIs(bool right) =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "sum.fits");
            Judge.Need("/usr/bin/python3", "python3-astropy");
            var text = Judge.Run(
                "/usr/bin/python3",
                out var code,
                "-c",
                "import sys, numpy as np\nfrom astropy.io import fits\n"
                    + "fits.HDUList([fits.PrimaryHDU(), fits.ImageHDU(np.arange(77, dtype='>i2').reshape(7, 11))])"
                    + ".writeto(sys.argv[1], checksum=True)",
                path
            );
            Assert.True(code == 0, text);
            if (!right)
            {
                var bytes = File.ReadAllBytes(path);
                bytes[^2000] ^= 1;
                File.WriteAllBytes(path, bytes);
            }

            var (warnings, errors, _) = Judge.Verify(path);
            Assert.Equal(right ? 0 : 2, warnings);
            var was = Checksum(path);

            SolutionUpdate.Write(path, Solution);

            Assert.Equal(
                (warnings, errors),
                (Judge.Verify(path).Warnings, Judge.Verify(path).Errors)
            );
            Assert.Equal(right, Checksum(path) != was);
        });

    [Fact]
    public void Write_GzipFile_StaysGzipAndKeepsItsSamples() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "packed.fits.gz");
            using (var packed = new GZipStream(File.Create(path), CompressionLevel.Fastest))
            {
                packed.Write(File.ReadAllBytes(TestData.Path("cases", "u16_extremes.fits")));
            }

            SolutionUpdate.Write(path, Solution);

            Assert.Equal([0x1F, 0x8B], File.ReadAllBytes(path)[..2]);
            AssertKept(TestData.Path("cases", "u16_extremes.fits"), path);
        });

    [Fact]
    public void Write_CompressedImage_KeepsItsTiles() =>
        TestData.InFolder(folder =>
        {
            var file = TestData.Path("tiles", "holes-dither.fz.fits");
            var path = Path.Combine(folder, "packed.fz.fits");
            File.Copy(file, path);

            SolutionUpdate.Write(path, Solution);

            AssertKept(file, path);
            using var written = FitsFile.Open(path);
            Assert.Equal(301.25, written.Header.Number("CRVAL1")!.Value, 1e-12);
            Assert.Equal((3, 0), (Judge.Verify(file).Warnings, Judge.Verify(file).Errors));
            Assert.Equal((1, 0), (Judge.Verify(path).Warnings, Judge.Verify(path).Errors));
        });

    [Fact]
    public void Write_ColoursWithAnAxisOfTheirOwn_LeavesThatAxisUsable() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "colours.fits");
            File.WriteAllBytes(
                path,
                TestData.FitsBytes(
                    [
                        "SIMPLE  =                    T",
                        "BITPIX  =                    8",
                        "NAXIS   =                    3",
                        "NAXIS1  =                    4",
                        "NAXIS2  =                    3",
                        "NAXIS3  =                    3",
                        "CTYPE3  = 'RGB     '",
                        "CRPIX3  =                  1.0",
                        "CDELT3  =                  2.0",
                        "CRVAL3  =                  1.0",
                    ],
                    new byte[2880]
                )
            );

            SolutionUpdate.Write(path, Solution);

            using var file = FitsFile.Open(path);
            Assert.Equal(3, file.Header.Integer("WCSAXES"));
            Assert.Equal(2.0, file.Header.Number("CD3_3"));
            var keywords = file.Header.Cards.Select(card => card.Keyword).ToList();
            Assert.True(
                keywords.IndexOf("WCSAXES") < keywords.IndexOf("CTYPE3"),
                "WCSAXES comes first"
            );
            Assert.Equal((0, 0), (Judge.Verify(path).Warnings, Judge.Verify(path).Errors));
        });

    [Fact]
    public void Write_ReadOnlyFile_IsRefusedAndLeftAlone() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "kept.fits");
            File.Copy(TestData.Path("cases", "u16_extremes.fits"), path);
            var before = File.ReadAllBytes(path);
            File.SetAttributes(path, FileAttributes.ReadOnly);

            Assert.Throws<UnauthorizedAccessException>(() => SolutionUpdate.Write(path, Solution));

            File.SetAttributes(path, FileAttributes.Normal);
            Assert.Equal(before, File.ReadAllBytes(path));
            Assert.Single(Directory.GetFiles(folder));
        });

    [Theory]
    [InlineData("BITPIX")]
    [InlineData("BZERO")]
    [InlineData("NAXIS1")]
    [InlineData("ROWORDER")]
    public void Write_CardsThatAreNoSolution_AreABrokenPromise(string keyword) =>
        Assert.Throws<ArgumentException>(() =>
            SolutionUpdate.Write(
                TestData.Path("cases", "u16_extremes.fits"),
                new FitsHeaderBuilder().Add(keyword, 8L)
            )
        );

    private static bool HasPicture(string path)
    {
        try
        {
            using var file = FitsFile.Open(path);
            return file.Image is not null;
        }
        catch (UnreadableFileException)
        {
            return false;
        }
    }

    private static string? Checksum(string path)
    {
        using var file = FitsFile.Open(path);
        return file.Header.Text("CHECKSUM");
    }

    /// <summary>All cards that are none of a solution stand as they stood, and all other bytes are the same.</summary>
    private static void AssertKept(string before, string after)
    {
        using var was = FitsFile.Open(before);
        using var now = FitsFile.Open(after);
        Assert.Equal(Others(was), Others(now));
        var count = was.Source.Length - was.Units[^1].DataStart;
        Assert.Equal(count, now.Source.Length - now.Units[^1].DataStart);
        Assert.Equal(
            Bytes(was.Source, was.Units[^1].DataStart, count),
            Bytes(now.Source, now.Units[^1].DataStart, count)
        );
        Assert.Equal(
            Bytes(was.Source, 0, was.Units[^1].HeaderStart),
            Bytes(now.Source, 0, now.Units[^1].HeaderStart)
        );
    }

    private static string Others(FitsFile file) =>
        string.Join(
            '\n',
            file.Header.Cards.Where(card =>
                    !SolutionKeywords.IsPart(card.Keyword)
                    && !(card.Keyword == "COMMENT" && card.Comment == "Solved from 41 stars.")
                )
                .Select(card => card.Image)
        );

    private static string Bytes(ByteSource source, long start, long count)
    {
        var bytes = new byte[count];
        source.ReadExactly(start, bytes);
        return count.ToString(CultureInfo.InvariantCulture) + Convert.ToHexString(bytes);
    }
}
