using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging.Tests;

public sealed class PictureFileTests
{
    private static readonly TanWorldCoordinates World = new(
        new(20.5, 10.5),
        SkyDirection.FromDegrees(38.2, 61.4),
        PixelMatrix.FromPositionAngle(
            PositionAngle.FromDegrees(21.0),
            Angle.FromArcseconds(40.0),
            mirrored: false
        )
    );

    /// <summary>26 files of every colour type and depth, plain and interlaced, made from known samples (tests/reference/fits/png.py).</summary>
    [Fact]
    public void Read_PngOfEveryKind_GivesTheSamplesItWasMadeFrom()
    {
        var files = 0;
        foreach (var entry in TestData.Json("png", "answers.json").EnumerateArray())
        {
            files++;
            var path = TestData.Path("png", entry.GetProperty("file").GetString()!);
            var facts = PictureFile.Inspect(path);
            var picture = PictureFile.Read(path);
            Assert.Equal((11, 7, facts.Planes), (picture.Width, picture.Height, picture.Planes));
            Assert.Equal(
                entry.GetProperty("depth").GetInt32() == 16
                    ? SampleFormat.UInt16
                    : SampleFormat.UInt8,
                facts.SampleFormat
            );
            var fromTop = 0;
            foreach (var row in entry.GetProperty("rows").EnumerateArray())
            {
                var y = 7 - fromTop++;
                var x = 0;
                foreach (var pixel in row.EnumerateArray())
                {
                    x++;
                    var expected = pixel
                        .EnumerateArray()
                        .Select(item => item.GetDouble())
                        .ToArray();
                    Assert.Equal(facts.Planes + (facts.HasAlpha ? 1 : 0), expected.Length);
                    var transparent = facts.HasAlpha && expected[^1] == 0.0;
                    for (var plane = 0; plane < picture.Planes; plane++)
                    {
                        Assert.Equal(
                            transparent ? float.NaN : (float)expected[plane],
                            picture.Plane(plane)[((y - 1) * 11) + x - 1]
                        );
                    }

                    if (x == fromTop)
                    {
                        Assert.Equal(
                            expected,
                            PictureFile.ReadSamples(path, new(x, y)).Select(sample => sample.Number)
                        );
                    }
                }
            }

            Assert.Equal(7, fromTop);
        }

        Assert.Equal(26, files);
    }

    [Theory]
    [InlineData(30000, 30000, 9_000_000, "30000 x 30000")]
    [InlineData(60000, 60000, 40, "60000 x 60000")]
    [InlineData(10000, 10000, 40, "cannot hold")]
    [InlineData(0, 10, 40, "0 x 10")]
    [InlineData(1, int.MaxValue, 9_000, "1 x 2147483647")]
    public void Read_PngWhoseSizeIsALieOrABomb_IsRefusedInLittleMemory(
        int width,
        int height,
        int bytes,
        string says
    )
    {
        var png = PngMaker.Grey(width, height, new byte[bytes]);
        TestData.WithFile(
            "bomb.png",
            png,
            path =>
            {
                var before = GC.GetAllocatedBytesForCurrentThread();
                var problem = Assert.Throws<UnreadableFileException>(() => PictureFile.Read(path));
                Assert.Contains(says, problem.Message, StringComparison.Ordinal);
                Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000);
            }
        );
    }

    [Fact]
    public void Read_PngCutOffAtAnyByte_IsRefused()
    {
        foreach (var name in new[] { "type2-16.png", "type6-8-interlaced.png", "type0-1.png" })
        {
            var whole = File.ReadAllBytes(TestData.Path("png", name));
            for (var length = 0; length < whole.Length; length++)
            {
                TestData.WithFile(
                    "cut.png",
                    whole[..length],
                    path => Assert.Throws<UnreadableFileException>(() => PictureFile.Read(path))
                );
            }
        }
    }

    [Fact]
    public void Read_PngWhoseDataEndEarly_IsRefused()
    {
        // The chunks are all there; only the rows within them are fewer than the header says.
        TestData.WithFile(
            "short.png",
            PngMaker.Grey(100, 100, PngMaker.Zeros(101 * 60)),
            path =>
                Assert.Contains(
                    "6060 of 10100",
                    Assert.Throws<UnreadableFileException>(() => PictureFile.Read(path)).Message,
                    StringComparison.Ordinal
                )
        );
        TestData.WithFile(
            "black.png",
            PngMaker.Grey(100, 100, PngMaker.Zeros(101 * 100)),
            path => Assert.Equal(0f, PictureFile.Read(path).Plane(0)[9999])
        );
    }

    [Theory]
    [InlineData("no-such.png", null, "no such file")]
    [InlineData("empty.png", "", "empty")]
    [InlineData(
        "text.png",
        "hello, sky; this is no picture",
        "neither a FITS nor a PNG, JPEG or TIFF"
    )]
    [InlineData("packed.fits.gz", "\u001F\u008B\u0008\0\0\0\0\0", "gzip")]
    public void Inspect_NoPicture_SaysWhat(string name, string? text, string says) =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, name);
            if (text is not null)
            {
                File.WriteAllBytes(path, System.Text.Encoding.Latin1.GetBytes(text));
            }

            Assert.Contains(
                says,
                Assert.Throws<UnreadableFileException>(() => PictureFile.Inspect(path)).Message,
                StringComparison.Ordinal
            );
        });

    [Theory]
    [InlineData("gray.png.wcs.txt")]
    [InlineData("gray.wcs.txt")]
    [InlineData("gray.wcs")]
    public void Inspect_PngWithCardsBesideIt_CountsRowsFromTheBottom(string beside) =>
        WithPng(path =>
        {
            File.WriteAllText(
                Path.Combine(Path.GetDirectoryName(path)!, beside),
                new FitsHeaderBuilder().AddSolution(World).ToText()
            );

            var facts = PictureFile.Inspect(path);

            Assert.Equal(Path.Combine(Path.GetDirectoryName(path)!, beside), facts.SolutionFile);
            Assert.Equal(World.Matrix, facts.Coordinates!.Matrix);
            Assert.Equal(World.ReferencePixel, facts.Coordinates.ReferencePixel);
            Assert.False(facts.RowsTopDown);
            Assert.Empty(facts.Warnings);

            // Row 0 of the PNG holds 65535 in its last column (case F43): that is y = height.
            Assert.Equal(65535.0, PictureFile.ReadSamples(path, new(8, facts.Height))[0].Number);
        });

    [Fact]
    public void Inspect_PngWithAFitsOfTwiceTheSizeBesideIt_CarriesTheSolution() =>
        WithPng(path =>
        {
            var facts = PictureFile.Inspect(path);
            FitsWriter.WriteImage<byte>(
                Path.ChangeExtension(path, ".fits"),
                facts.Width * 2,
                facts.Height * 2,
                1,
                new byte[facts.Width * facts.Height * 4],
                new FitsHeaderBuilder().AddSolution(World)
            );

            var placed = PictureFile.Inspect(path);

            Assert.Equal(80.0, placed.Sky!.ScaleX.Arcseconds, 1e-9);
            Assert.Equal(World.Binned(2.0).ReferencePixel, placed.Coordinates!.ReferencePixel);
            Assert.Contains(
                placed.Warnings,
                text => text.Contains("carried", StringComparison.Ordinal)
            );
        });

    [Fact]
    public void Inspect_PngWithATopDownFitsBesideIt_TurnsTheRows() =>
        WithPng(path =>
        {
            var facts = PictureFile.Inspect(path);
            FitsWriter.WriteImage<byte>(
                Path.ChangeExtension(path, ".fits"),
                facts.Width,
                facts.Height,
                1,
                new byte[facts.Width * facts.Height],
                new FitsHeaderBuilder().AddSolution(World).Add("ROWORDER", "TOP-DOWN")
            );

            // The sky at the PNG's top left pixel is that of the FITS file's first pixel.
            var place = PictureFile.Inspect(path).Coordinates!.PixelToSky(new(1, facts.Height));

            Assert.InRange(place.SeparationTo(World.PixelToSky(new(1, 1))).Arcseconds, 0.0, 1e-6);
        });

    [Fact]
    public void Inspect_PngWithCardsOfAnotherShapeBesideIt_HasNoSolutionAndSaysWhy() =>
        WithPng(path =>
        {
            var cards = new FitsHeaderBuilder()
                .Add("NAXIS1", 300L)
                .Add("NAXIS2", 100L)
                .AddSolution(World);
            File.WriteAllText($"{path}.wcs.txt", cards.ToText());

            var facts = PictureFile.Inspect(path);

            Assert.Null(facts.Sky);
            Assert.Contains("300 x 100", facts.Solution.WhyNone, StringComparison.Ordinal);
        });

    [Fact]
    public void Inspect_PngAlone_SaysWhatIsMissing() =>
        WithPng(path =>
        {
            var facts = PictureFile.Inspect(path);

            Assert.Null(facts.Sky);
            Assert.Contains("beside it", facts.Solution.WhyNone, StringComparison.Ordinal);
        });

    [Fact]
    public void Inspect_FitsPlacedByHand_TakesTheCardsBesideItAndSaysSo() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "frame.fits");
            File.Copy(TestData.Path("cases", "mirrored_cd.fits"), path);
            File.WriteAllText(
                $"{path}.wcs.txt",
                new FitsHeaderBuilder().AddSolution(World).ToText()
            );

            var facts = PictureFile.Inspect(path);

            Assert.Equal(World.Matrix, facts.Coordinates!.Matrix);
            Assert.Contains(
                facts.Warnings,
                text => text.Contains("frame.fits.wcs.txt", StringComparison.Ordinal)
            );
        });

    [Fact]
    public void Inspect_HeaderOfACamera_GivesItsFacts() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "frame.fits");
            var cards = new FitsHeaderBuilder()
                .Add("DATE-OBS", "2026-02-17T21:04:05.250")
                .Add("EXPTIME", 180.0)
                .Add("FILTER", "H-alpha")
                .Add("INSTRUME", "cooled camera")
                .Add("FOCALLEN", 250.0)
                .Add("XPIXSZ", 4.63)
                .Add("XBINNING", 1L)
                .Add("CCD-TEMP", -10.0)
                .Add("OBJECT", "the hearth");
            FitsWriter.WriteImage<short>(path, 2, 2, 1, new short[4], cards);

            var rig = PictureFile.Inspect(path).Rig;

            // Start and middle as in case F40.
            Assert.Equal(new DateTimeOffset(2026, 2, 17, 21, 4, 5, 250, TimeSpan.Zero), rig.Start);
            Assert.Equal(
                new DateTimeOffset(2026, 2, 17, 21, 5, 35, 250, TimeSpan.Zero),
                rig.Middle
            );
            Assert.Equal(
                ("H-alpha", "cooled camera", "the hearth"),
                (rig.Filter, rig.Instrument, rig.Object)
            );
            Assert.Equal(
                (250.0, 4.63, 1, -10.0),
                (rig.FocalLengthMillimetres, rig.PixelMicrometres, rig.Binning, rig.SensorCelsius)
            );
        });

    [Theory]
    [InlineData(0.4, 1.0)]
    [InlineData(8.6, 1.0)]
    [InlineData(1.0, 0.49)]
    [InlineData(double.NaN, 1.0)]
    public void ReadSamples_OutsideThePicture_IsNothing(double x, double y) =>
        Assert.Empty(PictureFile.ReadSamples(TestData.Path("cases", "gray16.png"), new(x, y)));

    [Theory]
    [InlineData("type2-16.png")]
    [InlineData("../cases/float_nan_first.fits")]
    public void Read_FewerPixelsAsked_IsTheWholePictureReduced(string name)
    {
        var path = TestData.Path("png", name);
        var whole = PictureFile.Read(path);

        var reduced = PictureFile.Read(path, whole.Width * whole.Height / 7);

        Assert.Equal(3, reduced.Reduction);
        var expected = whole.Reduced(3);
        for (var plane = 0; plane < whole.Planes; plane++)
        {
            Assert.Equal(expected.Plane(plane).ToArray(), reduced.Plane(plane).ToArray());
        }
    }

    /// <summary>2,000 truncations and byte flips of PNG, FITS and card files, seeded: a picture or one clear line.</summary>
    [Fact]
    public void Read_DamagedBytes_IsAnsweredOrRefusedInOneLine() =>
        TestData.InFolder(folder =>
        {
            var random = new Random(20261205);
            var files = Directory
                .GetFiles(TestData.Path("png"), "*.png")
                .Concat(Directory.GetFiles(TestData.Path("cases"), "*.*g"))
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes)
                .ToArray();
            Assert.Equal(30, files.Length);
            var cards = System.Text.Encoding.ASCII.GetBytes(
                new FitsHeaderBuilder().AddSolution(World).ToText()
            );
            var path = Path.Combine(folder, "damaged.png");
            var refused = 0;
            for (var round = 0; round < 2000; round++)
            {
                File.WriteAllBytes(path, Damaged(files[random.Next(files.Length)], random));
                File.WriteAllBytes($"{path}.wcs.txt", Damaged(cards, random));
                try
                {
                    PictureFile.Inspect(path);
                    PictureFile.Read(path);
                }
                catch (UnreadableFileException problem)
                {
                    refused++;
                    Assert.DoesNotContain('\n', problem.Message);
                }
            }

            Assert.InRange(refused, 700, 1990);
        });

    private static byte[] Damaged(byte[] whole, Random random)
    {
        var bytes =
            random.Next(4) == 0 ? whole[..random.Next(whole.Length)] : (byte[])whole.Clone();
        for (var flips = random.Next(0, 3); flips > 0 && bytes.Length > 0; flips--)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        return bytes;
    }

    private static void WithPng(Action<string> act) =>
        TestData.WithFile("gray.png", File.ReadAllBytes(TestData.Path("cases", "gray16.png")), act);
}
