using System.Text.Json;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging.Tests;

/// <summary>JPEG and TIFF files made from known samples by other programs (tests/reference/rasters).</summary>
public sealed class RasterFilesTests
{
    private static readonly JsonElement[] Answers =
    [
        .. TestData.Json("rasters", "answers.json").EnumerateArray(),
    ];

    public static TheoryData<string> Names =>
        [.. Answers.Select(entry => entry.GetProperty("file").GetString()!)];

    [Fact]
    public void Names_Counted() => Assert.Equal(151, Answers.Length);

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_OfEveryKind_GivesTheSamplesItWasMadeFrom(string name)
    {
        var entry = Entry(name);
        var path = TestData.Path("rasters", name);
        var facts = PictureFile.Inspect(path);
        var picture = PictureFile.Read(path);
        var (width, height) = (Int(entry, "width"), Int(entry, "height"));
        var (planes, step) = (Int(entry, "planes"), Int(entry, "step"));
        var tolerance = entry.GetProperty("tolerance").GetDouble();
        Assert.Equal(
            (width, height, planes, step > planes),
            (facts.Width, facts.Height, facts.Planes, facts.HasAlpha)
        );
        Assert.Equal(
            (width, height, planes, false),
            (picture.Width, picture.Height, picture.Planes, picture.RowsTopDown)
        );
        Assert.Equal(entry.GetProperty("format").GetString(), facts.SampleFormatName);
        var expected = Samples(entry);
        Assert.Equal(width * height * step, expected.Length);
        for (var at = 0; at < expected.Length; at++)
        {
            var (pixel, sample) = (at / step, at % step);
            var (column, fromTop) = (pixel % width, pixel / width);
            if (sample < planes)
            {
                var clear = step > planes && expected[(pixel * step) + step - 1] == 0.0;
                var shown = picture.Plane(sample)[((height - 1 - fromTop) * width) + column];
                Assert.True(
                    clear ? float.IsNaN(shown) : Math.Abs((float)expected[at] - shown) <= tolerance,
                    FormattableString.Invariant(
                        $"{name}: column {column}, row {fromTop}, plane {sample}: {shown}, made from {expected[at]}"
                    )
                );
            }
        }

        foreach (var pixel in new[] { 0, width - 1, (width * height) - 1, (width * 3) + 2 })
        {
            var samples = PictureFile.ReadSamples(
                path,
                new((pixel % width) + 1, height - (pixel / width))
            );
            Assert.Equal(step, samples.Count);
            for (var i = 0; i < step; i++)
            {
                Assert.Equal(expected[(pixel * step) + i], samples[i].Number, tolerance);
                Assert.Equal(!facts.SampleFormatName.StartsWith('f'), samples[i].Whole is not null);
            }
        }
    }

    [Theory]
    [InlineData("turned-1.tif")]
    [InlineData("turned-7.tif")]
    [InlineData("u2-3-lzw-tiles.tif")]
    [InlineData("u2-alpha.tif")]
    public void Read_FewerPixelsAsked_IsTheWholePictureReduced(string name)
    {
        var path = TestData.Path("rasters", name);
        var whole = PictureFile.Read(path);

        var reduced = PictureFile.Read(path, whole.Width * whole.Height / 7);

        Assert.Equal(3, reduced.Reduction);
        var expected = whole.Reduced(3);
        for (var plane = 0; plane < 3; plane++)
        {
            Assert.Equal(expected.Plane(plane).ToArray(), reduced.Plane(plane).ToArray());
        }
    }

    [Theory]
    [InlineData("refused-cmyk.jpg", "4 colour components")]
    [InlineData("refused-cmyk.tif", "CMYK")]
    [InlineData("refused-jpeg.tif", "JPEG|YCbCr")]
    [InlineData("refused-fax.tif", "fax")]
    public void Inspect_KindsThatAreNotRead_AreNamed(string name, string says)
    {
        var problem = Assert.Throws<UnreadableFileException>(() =>
            PictureFile.Inspect(TestData.Path("rasters", name))
        );
        Assert.Contains(
            says.Split('|'),
            word => problem.Message.Contains(word, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Inspect_CameraTags_GiveTheRig()
    {
        var facts = PictureFile.Inspect(TestData.Path("rasters", "turned-6.jpg"));

        Assert.Equal(
            ("a camera", 0.125, 250.0),
            (facts.Rig.Instrument, facts.Rig.ExposureSeconds, facts.Rig.FocalLengthMillimetres)
        );
        Assert.Equal(new DateTimeOffset(2026, 2, 17, 21, 4, 5, TimeSpan.Zero), facts.Rig.Start);
        Assert.Empty(facts.Warnings);
    }

    [Fact]
    public void Inspect_CameraClockWithoutZone_IsNotTakenForUtc()
    {
        var facts = PictureFile.Inspect(TestData.Path("rasters", "turned-2.jpg"));

        Assert.Null(facts.Rig.Start);
        Assert.Contains(
            facts.Warnings,
            text => text.Contains("22:04:05", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("turned-6.jpg", "turned-6.jpg.wcs.txt")]
    [InlineData("turned-6.tif", "turned-6.wcs")]
    public void Inspect_CardsBesideIt_CountFromTheBottomLeftAsShown(string name, string beside) =>
        TestData.InFolder(folder =>
        {
            var world = new TanWorldCoordinates(
                new(20.5, 10.5),
                SkyDirection.FromDegrees(38.2, 61.4),
                PixelMatrix.FromPositionAngle(
                    PositionAngle.FromDegrees(21.0),
                    Angle.FromArcseconds(40.0),
                    mirrored: false
                )
            );
            var path = Path.Combine(folder, name);
            File.Copy(TestData.Path("rasters", name), path);
            Assert.Contains(
                "beside it",
                PictureFile.Inspect(path).Solution.WhyNone,
                StringComparison.Ordinal
            );
            File.WriteAllText(
                Path.Combine(folder, beside),
                new FitsHeaderBuilder().AddSolution(world).ToText()
            );

            var facts = PictureFile.Inspect(path);

            Assert.Equal(Path.Combine(folder, beside), facts.SolutionFile);
            Assert.Equal(world.ReferencePixel, facts.Coordinates!.ReferencePixel);
            Assert.Equal(facts.Sky!.PositionAngle, facts.Sky.DisplayedPositionAngle);
            Assert.Equal(world.Matrix, PictureFile.Read(path).Coordinates!.Matrix);
        });

    /// <summary>Files that lie: a directory that points at itself, sizes and counts beyond all bounds, a picture cut off.</summary>
    [Theory]
    [InlineData("loop", "directory")]
    [InlineData("wide-nowhere", "directory")]
    [InlineData("many-entries", "directory")]
    [InlineData("huge-size", "million pixels")]
    [InlineData("huge-strips", "tag 273")]
    [InlineData("huge-samples", "277")]
    [InlineData("one-tag", "size")]
    [InlineData("deflate-bomb", "part 1 of 1")]
    [InlineData("half-jpeg", "rows can be read")]
    [InlineData("huge-jpeg", "bytes")]
    [InlineData("jpeg-start", "cut short")]
    public void Inspect_FilesThatLie_AreRefusedInOneLineAndLittleMemory(string kind, string says) =>
        TestData.WithFile(
            "lie",
            Lie(kind),
            path =>
            {
                var before = GC.GetAllocatedBytesForCurrentThread();

                var problem = Assert.Throws<UnreadableFileException>(() => PictureFile.Read(path));

                Assert.Contains(says, problem.Message, StringComparison.Ordinal);
                Assert.DoesNotContain('\n', problem.Message);
                Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20_000_000);
            }
        );

    /// <summary>The file's second directory is its first again: nothing but the first is read.</summary>
    [Fact]
    public void Read_DirectoriesInALoop_GivesTheFirstPictureAndSaysThereAreMore() =>
        TestData.WithFile(
            "loop.tif",
            Tags([(256, 4), (257, 2), (258, 8), (262, 1), (273, 8), (278, 2), (279, 8)], next: 16),
            path =>
            {
                Assert.Equal(8, PictureFile.Read(path).Plane(0).Length);
                Assert.Contains(
                    PictureFile.Inspect(path).Warnings,
                    text => text.Contains("more pictures", StringComparison.Ordinal)
                );
            }
        );

    /// <summary>2,000 truncations and byte flips, half of them within the first 400 bytes or the tags; seeded.</summary>
    [Fact]
    public void Read_DamagedBytes_IsAnsweredOrRefusedInOneLine() =>
        TestData.InFolder(folder =>
        {
            var random = new Random(20261207);
            var files = Directory
                .GetFiles(TestData.Path("rasters"), "*.*")
                .Where(path => !path.EndsWith(".json", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes)
                .ToArray();
            Assert.Equal(151 + 4, files.Length);
            var path = Path.Combine(folder, "damaged");
            var (refused, most) = (0, 0L);
            for (var round = 0; round < 2000; round++)
            {
                File.WriteAllBytes(path, Damaged(files[round % files.Length], random));
                var before = GC.GetAllocatedBytesForCurrentThread();
                try
                {
                    PictureFile.Inspect(path);
                    PictureFile.Read(path, 1_000_000);
                }
                catch (UnreadableFileException problem)
                {
                    refused++;
                    Assert.DoesNotContain('\n', problem.Message);
                }

                most = Math.Max(most, GC.GetAllocatedBytesForCurrentThread() - before);
            }

            Assert.InRange(refused, 500, 1950);
            Assert.InRange(most, 1, 400_000_000);
        });

    private static byte[] Lie(string kind)
    {
        var jpeg = File.ReadAllBytes(TestData.Path("rasters", "subsampled.jpg"));
        (int Tag, uint Value)[] sound =
        [
            (256, 4),
            (257, 2),
            (258, 8),
            (262, 1),
            (273, 8),
            (277, 1),
            (278, 2),
            (279, 8),
        ];
        (int, uint)[] But(int tag, uint value) =>
            [.. sound.Select(one => one.Tag == tag ? (tag, value) : one)];
        switch (kind)
        {
            case "loop":
                // BigTIFF of 24 bytes whose directory is its own header.
                return
                [
                    .. "II+\0\u0008\0\0\0\u0008\0\0\0\0\0\0\0"u8,
                    .. new byte[] { 0, 1, 4, 0, 255, 255, 255, 255 },
                ];
            case "wide-nowhere":
                return [.. "MM\0+\0\u0008\0\0"u8, 127, 255, 255, 255, 255, 255, 255, 255];
            case "many-entries":
                return [.. "II*\0\u0008\0\0\0"u8, 255, 255, .. new byte[100]];
            case "huge-size":
                return Tags(But(256, uint.MaxValue));
            case "huge-strips":
                var bytes = Tags(sound);
                bytes.AsSpan(16 + 2 + (4 * 12) + 4, 4).Fill(0x3F);
                return bytes;
            case "huge-samples":
                return Tags(But(277, 60000));
            case "one-tag":
                return Tags([(258, 8)]);
            case "deflate-bomb":
                return Tags([
                    (256, 10_000),
                    (257, 10_000),
                    (258, 8),
                    (259, 8),
                    (262, 1),
                    (273, 8),
                    (278, 10_000),
                    (279, 8),
                ]);
            case "half-jpeg":
                return jpeg[..(jpeg.Length * 2 / 3)];
            case "huge-jpeg":
                var frame = jpeg.AsSpan().IndexOf([(byte)0xFF, (byte)0xC0]);
                jpeg.AsSpan(frame + 5, 4).Fill(0x20);
                return jpeg;
            default:
                return jpeg[..40];
        }
    }

    /// <summary>A small TIFF: eight bytes of samples at byte 8, then a directory of single numbers at byte 16.</summary>
    private static byte[] Tags((int Tag, uint Value)[] tags, uint next = 0)
    {
        using var memory = new MemoryStream();
        using var writer = new BinaryWriter(memory);
        writer.Write("II*\0"u8);
        writer.Write(16u);
        writer.Write(0x0807060504030201UL);
        writer.Write((ushort)tags.Length);
        foreach (var (tag, value) in tags)
        {
            writer.Write((ushort)tag);
            writer.Write((ushort)4);
            writer.Write(1u);
            writer.Write(value);
        }

        writer.Write(next);
        return memory.ToArray();
    }

    private static byte[] Damaged(byte[] whole, Random random)
    {
        if (random.Next(4) == 0)
        {
            return whole[..random.Next(whole.Length)];
        }

        var bytes = (byte[])whole.Clone();
        for (var flips = random.Next(1, 4); flips > 0; flips--)
        {
            var at = random.Next(3) switch
            {
                0 => random.Next(Math.Min(400, bytes.Length)),
                1 => Math.Max(0, bytes.Length - 1 - random.Next(300)),
                _ => random.Next(bytes.Length),
            };
            bytes[at] = (byte)random.Next(256);
        }

        return bytes;
    }

    private static double[] Samples(JsonElement entry) =>
        [
            .. (entry.TryGetProperty("as", out var other) ? Entry(other.GetString()!) : entry)
                .GetProperty("samples")
                .EnumerateArray()
                .Select(item => item.GetDouble()),
        ];

    private static int Int(JsonElement entry, string name) => entry.GetProperty(name).GetInt32();

    private static JsonElement Entry(string name) =>
        Answers.Single(entry => entry.GetProperty("file").GetString() == name);
}
