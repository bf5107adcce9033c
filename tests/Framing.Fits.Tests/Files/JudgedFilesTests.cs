using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Fits.Tests;

/// <summary>Files of ours before independent judges: fitsverify finds nothing, cfitsio and astropy read the same samples.</summary>
public sealed class JudgedFilesTests
{
    private static readonly TanWorldCoordinates Place = new(
        new(4.5, 3.0),
        SkyDirection.FromDegrees(38.25, -61.5),
        new(-1.25e-3, 3.5e-5, 4.0e-5, 1.25e-3)
    );

    [Fact]
    public void WriteImage_EverySampleType_IsCleanAndReadsBackTheSame() =>
        TestData.InFolder(folder =>
        {
            var made = new List<(string Path, string Kind, string Digest)>
            {
                Make<byte>(folder, "u1", 1),
                Make<sbyte>(folder, "i1", 1),
                Make<short>(folder, "i2", 3),
                Make<ushort>(folder, "u2", 1),
                Make<int>(folder, "i4", 1),
                Make<uint>(folder, "u4", 3),
                Make<long>(folder, "i8", 1),
                Make<ulong>(folder, "u8", 1),
                Make<float>(folder, "f4", 1),
                Make<double>(folder, "f8", 3),
            };

            foreach (var (path, _, _) in made)
            {
                AssertClean(path);
            }

            var read = Judge.ReadBack(made.ConvertAll(entry => entry.Path));
            Assert.Equal(10, read.Length);
            foreach (var (entry, (_, kind, digest)) in read.Zip(made))
            {
                foreach (var reader in (string[])["astropy", "cfitsio"])
                {
                    var seen = entry.GetProperty(reader);
                    Assert.Equal(digest, seen.GetProperty("sha256").GetString());
                    Assert.Equal(kind, seen.GetProperty("kind").GetString());
                    AssertPlace(seen.GetProperty("keys"));
                }
            }
        });

    [Fact]
    public void WriteHeader_IsClean() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "header.fits");

            FitsWriter.WriteHeader(path, Cards());

            AssertClean(path);
        });

    private static FitsHeaderBuilder Cards() =>
        new FitsHeaderBuilder()
            .Add("OBJECT", "The rim of O'Malley's lane " + new string('x', 90), "a long name")
            .Add("EXPTIME", 180.0, "seconds")
            .AddComment(new string('c', 100))
            .AddSolution(Place);

    private static (string Path, string Kind, string Digest) Make<T>(
        string folder,
        string kind,
        int planes
    )
        where T : unmanaged
    {
        // 8 columns, 5 rows: every bit pattern that is a number, the extremes among them.
        var samples = new T[8 * 5 * planes];
        var bytes = MemoryMarshal.AsBytes(samples.AsSpan());
        new Random(20260).NextBytes(bytes);
        bytes[..8].Clear();
        bytes[8..16].Fill(0xFF);
        if (samples is float[] floats)
        {
            for (var i = 0; i < floats.Length; i++)
            {
                floats[i] = (i * 1.37f) - 20f;
            }
        }
        else if (samples is double[] doubles)
        {
            for (var i = 0; i < doubles.Length; i++)
            {
                doubles[i] = (i * 1.37) - 20.0;
            }
        }

        var path = Path.Combine(folder, kind + ".fits");
        FitsWriter.WriteImage<T>(path, 8, 5, planes, samples, Cards());
        return (path, kind, Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    private static void AssertPlace(JsonElement keys)
    {
        Assert.Equal(38.25, keys.GetProperty("CRVAL1").GetDouble(), 1e-12);
        Assert.Equal(-61.5, keys.GetProperty("CRVAL2").GetDouble(), 1e-12);
        Assert.Equal(-1.25e-3, keys.GetProperty("CD1_1").GetDouble());
        Assert.Equal(3.5e-5, keys.GetProperty("CD1_2").GetDouble());
    }

    private static void AssertClean(string path)
    {
        var (warnings, errors, text) = Judge.Verify(path);
        Assert.True(warnings == 0 && errors == 0, text);
    }
}
