namespace Framing.Fits.Tests;

public sealed class FitsImageTests
{
    /// <summary>42 files of every BITPIX, with scalings, offsets and BLANK, against cfitsio 4.2.0 (tests/reference/fits/make.py).</summary>
    [Fact]
    public void Samples_OfEveryKind_AgreeWithCfitsio()
    {
        var files = 0;
        foreach (var entry in TestData.Json("images", "answers.json").EnumerateArray())
        {
            files++;
            var name = entry.GetProperty("file").GetString()!;
            using var file = FitsFile.Open(TestData.Path("images", name));
            var image = file.RequireImage();
            Assert.Equal(
                (7, 5, entry.GetProperty("planes").GetInt32()),
                (image.Width, image.Height, image.Planes)
            );
            AssertDoubles(name, TestData.Doubles(entry.GetProperty("doubles")), image);
            AssertFloats(name, TestData.Doubles(entry.GetProperty("floats")), image);
        }

        Assert.Equal(42, files);
    }

    [Theory]
    [InlineData(8, "-128", SampleFormat.Int8)]
    [InlineData(8, "0", SampleFormat.UInt8)]
    [InlineData(16, "32768.0", SampleFormat.UInt16)]
    [InlineData(16, "1", SampleFormat.Int16)]
    [InlineData(32, "2147483648", SampleFormat.UInt32)]
    [InlineData(64, "9223372036854775808", SampleFormat.UInt64)]
    [InlineData(-32, "0", SampleFormat.Float32)]
    [InlineData(-64, "0", SampleFormat.Float64)]
    public void Format_FromBitpixAndOffset_IsWhatValuesAre(
        int bits,
        string zero,
        SampleFormat format
    )
    {
        using var file = FitsFile.Open(
            "made",
            TestData.FitsBytes(Cards(bits, $"BZERO   = {zero}"), new byte[64])
        );

        Assert.Equal(format, file.RequireImage().Scaling.Format);
    }

    [Fact]
    public void ReadSample_UnsignedSixtyFourBit_IsExact()
    {
        var largest = new byte[64];
        largest.AsSpan(0, 8).Fill(0xFF);
        largest[0] = 0x7F;
        using var file = FitsFile.Open(
            "made",
            TestData.FitsBytes(Cards(64, "BZERO   = 9223372036854775808"), largest)
        );

        Assert.Equal((Int128)ulong.MaxValue, file.RequireImage().ReadSample(0, 0, 0).Whole);
    }

    [Fact]
    public void ReadRows_WideRowsOfSixteenBits_AreTheSameByVectorAndOneByOne()
    {
        var data = new byte[2 * 997 * 3];
        new Random(5).NextBytes(data);
        string[] cards =
        [
            "SIMPLE  = T",
            "BITPIX  = 16",
            "NAXIS   = 2",
            "NAXIS1  = 997",
            "NAXIS2  = 3",
            "BZERO   = 32768",
        ];
        using var file = FitsFile.Open("made", TestData.FitsBytes(cards, data));
        var image = file.RequireImage();
        var values = new float[997 * 2];

        image.ReadRows(0, 1, values);

        for (var i = 0; i < values.Length; i++)
        {
            Assert.Equal(image.ReadSample(0, i % 997, 1 + (i / 997)).Number, values[i]);
        }
    }

    [Theory]
    [InlineData(1, 0, 4)]
    [InlineData(-1, 0, 4)]
    [InlineData(0, -1, 4)]
    [InlineData(0, 0, 3)]
    [InlineData(0, 1, 8)]
    public void ReadRows_OutsideTheImage_IsRefused(int plane, int row, int samples)
    {
        using var file = FitsFile.Open(
            "made",
            TestData.FitsBytes(Cards(16, "BZERO   = 0"), new byte[64])
        );

        Assert.Throws<ArgumentOutOfRangeException>(() =>
            file.RequireImage().ReadRows(plane, row, new float[samples])
        );
    }

    private static string[] Cards(int bits, string card) =>
        [
            "SIMPLE  = T",
            FormattableString.Invariant($"BITPIX  = {bits}"),
            "NAXIS   = 2",
            "NAXIS1  = 4",
            "NAXIS2  = 2",
            card,
        ];

    private static void AssertDoubles(string name, double[] expected, FitsImage image)
    {
        for (var i = 0; i < expected.Length; i++)
        {
            var value = image.ReadSample(i / 35, i % 7, i % 35 / 7).Number;

            // cfitsio rounds product and sum one by one, as here; one unit in the last place is left for either.
            Assert.True(
                value.Equals(expected[i])
                    || Math.Abs(value - expected[i])
                        <= Math.BitIncrement(Math.Abs(expected[i])) - Math.Abs(expected[i]),
                FormattableString.Invariant(
                    $"{name}, sample {i}: {value} where cfitsio has {expected[i]}."
                )
            );
        }
    }

    private static void AssertFloats(string name, double[] expected, FitsImage image)
    {
        var values = new float[35];
        for (var plane = 0; plane < image.Planes; plane++)
        {
            image.ReadRows(plane, 0, values);
            for (var i = 0; i < values.Length; i++)
            {
                var wanted = (float)expected[(plane * 35) + i];
                Assert.True(
                    values[i].Equals(wanted)
                        || Math.Abs(values[i] - wanted)
                            <= MathF.BitIncrement(Math.Abs(wanted)) - Math.Abs(wanted),
                    FormattableString.Invariant(
                        $"{name}, sample {i} of plane {plane}: {values[i]} where cfitsio has {wanted}."
                    )
                );
            }
        }
    }
}
