namespace Framing.Fits.Tests;

public sealed class FitsFileTests
{
    [Theory]
    [InlineData("NAXIS1  = 2000000", "NAXIS2  = 2", "NAXIS1")]
    [InlineData("NAXIS1  = 9223372036854775807", "NAXIS2  = 9223372036854775807", "NAXISn")]
    [InlineData("NAXIS1  = 1.5", "NAXIS2  = 2", "NAXIS1")]
    [InlineData("NAXIS1  = 2", "NAXIS3  = 2", "NAXIS2")]
    [InlineData("NAXIS1  = 900000", "NAXIS2  = 900000", "truncated")]
    public void Open_AbsurdAxes_IsRefusedWithoutAllocating(
        string first,
        string second,
        string names
    )
    {
        var bytes = TestData.FitsBytes(
            ["SIMPLE  = T", "BITPIX  = 16", "NAXIS   = 2", first, second],
            new byte[64]
        );
        var before = GC.GetAllocatedBytesForCurrentThread();

        var problem = Assert.Throws<UnreadableFileException>(() => FitsFile.Open("made", bytes));

        Assert.Contains(names, problem.Message, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000);
    }

    [Theory]
    [InlineData("BITPIX  = 12", "BITPIX")]
    [InlineData("BITPIX  = 'abc'", "BITPIX")]
    [InlineData("BITPIX  =", "BITPIX")]
    public void Open_WrongBitpix_IsRefused(string card, string names)
    {
        var bytes = TestData.FitsBytes(
            ["SIMPLE  = T", card, "NAXIS   = 2", "NAXIS1  = 2", "NAXIS2  = 2"],
            new byte[64]
        );

        Assert.Equal(
            names,
            Assert.Throws<UnreadableFileException>(() => FitsFile.Open("made", bytes)).Where
        );
    }

    [Fact]
    public void Open_NoSuchFile_SaysSo()
    {
        var problem = Assert.Throws<UnreadableFileException>(() =>
            FitsFile.Open("no-such-frame.fits")
        );

        Assert.Equal(
            "no-such-frame.fits: there is no such file; check the name and the folder.",
            problem.Message
        );
    }

    [Fact]
    public void Open_Folder_SaysSo() =>
        Assert.Contains(
            "folder",
            Assert
                .Throws<UnreadableFileException>(() => FitsFile.Open(AppContext.BaseDirectory))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Open_HeaderWithoutData_HasNoImage()
    {
        using var file = FitsFile.Open(
            "made",
            TestData.FitsBytes(["SIMPLE  = T", "BITPIX  = 8", "NAXIS   = 0"], [])
        );

        Assert.Null(file.Image);
        Assert.Contains(
            "holds none",
            Assert.Throws<UnreadableFileException>(file.RequireImage).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Open_CompressedImageWithoutItsPacking_IsRefused()
    {
        byte[] bytes =
        [
            .. TestData.FitsBytes(["SIMPLE  = T", "BITPIX  = 8", "NAXIS   = 0"], []),
            .. TestData.FitsBytes(
                [
                    "XTENSION= 'BINTABLE'",
                    "BITPIX  = 8",
                    "NAXIS   = 2",
                    "NAXIS1  = 8",
                    "NAXIS2  = 2",
                    "PCOUNT  = 100",
                    "GCOUNT  = 1",
                    "ZIMAGE  = T",
                ],
                new byte[2880]
            ),
        ];

        var problem = Assert.Throws<UnreadableFileException>(() => FitsFile.Open("made", bytes));

        Assert.StartsWith(
            "made: ZCMPTYPE: it is missing;",
            problem.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Open_TableBeforeTheImage_IsPassedOver()
    {
        byte[] bytes =
        [
            .. TestData.FitsBytes(["SIMPLE  = T", "BITPIX  = 8", "NAXIS   = 0"], []),
            .. TestData.FitsBytes(
                [
                    "XTENSION= 'TABLE'",
                    "BITPIX  = 8",
                    "NAXIS   = 2",
                    "NAXIS1  = 8",
                    "NAXIS2  = 400",
                    "PCOUNT  = 0",
                    "GCOUNT  = 1",
                ],
                new byte[5760]
            ),
            .. TestData.FitsBytes(
                [
                    "XTENSION= 'IMAGE'",
                    "BITPIX  = 8",
                    "NAXIS   = 2",
                    "NAXIS1  = 2",
                    "NAXIS2  = 1",
                    "PCOUNT  = 0",
                    "GCOUNT  = 1",
                ],
                [7, 9]
            ),
        ];
        using var file = FitsFile.Open("made", bytes);

        Assert.Equal(
            [FitsUnitKind.HeaderOnly, FitsUnitKind.TextTable, FitsUnitKind.Image],
            file.Units.Select(unit => unit.Kind)
        );
        Assert.Equal(9.0, file.RequireImage().ReadSample(0, 1, 0).Number);
    }

    /// <summary>
    /// 6,000 truncations and byte flips of the case files, seeded: an answer or one clear line, never another exception.
    /// </summary>
    [Fact]
    public void Open_DamagedBytes_IsAnsweredOrRefusedInOneLine()
    {
        var random = new Random(20261205);
        var files = Directory
            .GetFiles(TestData.Path("cases"), "*.fits")
            .Order(StringComparer.Ordinal)
            .Select(File.ReadAllBytes)
            .ToArray();
        Assert.Equal(32, files.Length);
        var refused = 0;
        for (var round = 0; round < 6000; round++)
        {
            var bytes = Damaged(files[random.Next(files.Length)], random);
            try
            {
                using var file = FitsFile.Open("damaged", bytes);
                var image = file.RequireImage();
                image.ReadRows(0, image.Height - 1, new float[image.Width]);
                var world = WorldCoordinatesReader.Read(file.Header).Coordinates;
                world?.PixelToSky(new(image.Width, image.Height));
                world?.TrySkyToPixel(world.ReferenceDirection, out _);
                HeaderFile.Read(ByteSource.Of("damaged", bytes));
            }
            catch (UnreadableFileException problem)
            {
                refused++;
                Assert.DoesNotContain('\n', problem.Message);
            }
        }

        // Both happen often, so that the test does exercise both ways.
        Assert.InRange(refused, 1000, 5000);
    }

    private static byte[] Damaged(byte[] whole, Random random)
    {
        var bytes =
            random.Next(3) == 0 ? whole[..random.Next(whole.Length)] : (byte[])whole.Clone();
        for (var flips = random.Next(1, 8); flips > 0 && bytes.Length > 0; flips--)
        {
            // Most of the flips go where the cards are.
            var place =
                random.Next(2) == 0
                    ? random.Next(Math.Min(bytes.Length, 2000))
                    : random.Next(bytes.Length);
            bytes[place] =
                random.Next(3) == 0
                    ? (byte)"0123456789-+.E'T/ "[random.Next(18)]
                    : (byte)random.Next(256);
        }

        return bytes;
    }
}
