using System.Numerics;
using FsCheck.Xunit;

namespace Framing.Fits.Tests;

public sealed class FitsWriterTests
{
    [Property(MaxTest = 30)]
    public void WriteImage_Bytes_ComeBack(byte[] samples) =>
        AssertRoundTrip(samples, SampleFormat.UInt8);

    [Property(MaxTest = 30)]
    public void WriteImage_SignedBytes_ComeBack(sbyte[] samples) =>
        AssertRoundTrip(samples, SampleFormat.Int8);

    [Property(MaxTest = 30)]
    public void WriteImage_Int16_ComeBack(short[] samples) =>
        AssertRoundTrip(samples, SampleFormat.Int16);

    [Property(MaxTest = 30)]
    public void WriteImage_UInt16_ComeBack(ushort[] samples) =>
        AssertRoundTrip(samples, SampleFormat.UInt16);

    [Property(MaxTest = 30)]
    public void WriteImage_Int32_ComeBack(int[] samples) =>
        AssertRoundTrip(samples, SampleFormat.Int32);

    [Property(MaxTest = 30)]
    public void WriteImage_UInt32_ComeBack(uint[] samples) =>
        AssertRoundTrip(samples, SampleFormat.UInt32);

    [Property(MaxTest = 30)]
    public void WriteImage_Int64_ComeBack(long[] samples) =>
        AssertRoundTrip(samples, SampleFormat.Int64);

    [Property(MaxTest = 30)]
    public void WriteImage_UInt64_ComeBack(ulong[] samples) =>
        AssertRoundTrip(samples, SampleFormat.UInt64);

    [Property(MaxTest = 30)]
    public void WriteImage_Float32_ComeBack(float[] samples) =>
        AssertRoundTrip(samples, SampleFormat.Float32);

    [Property(MaxTest = 30)]
    public void WriteImage_Float64_ComeBack(double[] samples) =>
        AssertRoundTrip(samples, SampleFormat.Float64);

    [Fact]
    public void WriteImage_WithCards_KeepsThemAndFillsBlocks() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "made.fits");
            var cards = new FitsHeaderBuilder()
                .Add("OBJECT", "ridge")
                .AddComment("made for a test");

            FitsWriter.WriteImage<ushort>(path, 3, 2, 2, new ushort[12], cards);

            Assert.Equal(2 * 2880, new FileInfo(path).Length);
            using var file = FitsFile.Open(path);
            Assert.Equal(2, file.RequireImage().Planes);
            Assert.Equal("ridge", file.Header.Text("OBJECT"));
            Assert.Contains(
                file.Header.Cards,
                card => card is { Keyword: "COMMENT", Comment: "made for a test" }
            );
            Assert.Empty(file.Warnings);
        });

    [Fact]
    public void WriteHeader_WithoutData_IsReadAsHeader() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "header.fits");

            FitsWriter.WriteHeader(path, new FitsHeaderBuilder().Add("CRVAL1", 38.25));

            Assert.Equal(38.25, HeaderFile.Read(path).Number("CRVAL1"));
        });

    [Fact]
    public void WriteImage_ShapeThatDoesNotFit_IsRefusedAndNothingIsLeft() =>
        TestData.InFolder(folder =>
        {
            Assert.Throws<ArgumentException>(() =>
                FitsWriter.WriteImage<byte>(Path.Combine(folder, "made.fits"), 3, 2, 1, new byte[5])
            );
            Assert.Throws<NotSupportedException>(() =>
                FitsWriter.WriteImage<char>(Path.Combine(folder, "made.fits"), 1, 1, 1, new char[1])
            );
            Assert.Empty(Directory.GetFiles(folder));
        });

    [Fact]
    public void Write_FailureHalfWay_LeavesTheOldFileAlone() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "kept.txt");
            File.WriteAllText(path, "old");

            Assert.Throws<InvalidOperationException>(() =>
                WholeFile.Write(
                    path,
                    stream =>
                    {
                        stream.Write("half"u8);
                        throw new InvalidOperationException();
                    }
                )
            );

            Assert.Equal("old", File.ReadAllText(path));
            Assert.Single(Directory.GetFiles(folder));
        });

    [Theory]
    [InlineData("lower", "text")]
    [InlineData("TOOLONGKEY", "text")]
    [InlineData("", "text")]
    [InlineData("OBJECT", "caf\u00E9")]
    [InlineData("OBJECT", "two\nlines")]
    public void Add_WhatACardCannotHold_IsRefused(string keyword, string text) =>
        Assert.ThrowsAny<ArgumentException>(() => new FitsHeaderBuilder().Add(keyword, text));

    [Fact]
    public void Add_NumberThatIsNotFinite_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new FitsHeaderBuilder().Add("GAIN", double.NaN)
        );

    [Fact]
    public void Images_OfFixedValues_StandInTheirColumns()
    {
        // FITS Standard 4.0, section 4.2: logical in column 30, numbers right-justified to it, strings from column 11.
        var images = new FitsHeaderBuilder()
            .Add("A", true)
            .Add("B", 5L, "five")
            .Add("C", 1e-20)
            .Add("D", "x")
            .Images;

        Assert.Equal("A       =                    T", images[0].TrimEnd());
        Assert.Equal("B       =                    5 / five", images[1].TrimEnd());
        Assert.Equal("C       =              1.0E-20", images[2].TrimEnd());
        Assert.Equal("D       = 'x       '", images[3].TrimEnd());
    }

    private static void AssertRoundTrip<T>(T[]? samples, SampleFormat format)
        where T : unmanaged, INumber<T> =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "made.fits");
            var all = samples is { Length: > 0 } ? samples : [T.One];
            FitsWriter.WriteImage<T>(path, all.Length, 1, 1, all);
            using var file = FitsFile.Open(path);
            var image = file.RequireImage();
            Assert.Equal(format, image.Scaling.Format);
            var values = new float[all.Length];
            image.ReadRows(0, 0, values);
            for (var i = 0; i < all.Length; i++)
            {
                var back = image.ReadSample(0, i, 0);
                Assert.Equal(double.CreateChecked(all[i]), back.Number);
                Assert.Equal(float.CreateChecked(all[i]), values[i]);
                if (T.IsInteger(all[i]) && format < SampleFormat.Float32)
                {
                    Assert.Equal(Int128.CreateChecked(all[i]), back.Whole);
                }
            }
        });
}
