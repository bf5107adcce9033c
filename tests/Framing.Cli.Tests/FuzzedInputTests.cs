using Framing.Fits;
using Framing.Fuzz;
using Framing.Imaging;

namespace Framing.Cli.Tests;

/// <summary>
/// What fuzzing found to reach far into the doors (tests/Framing.Fuzz/Corpus), and seeded changes of it: a picture or one
/// clear line, each time.
/// </summary>
public sealed class FuzzedInputTests
{
    /// <summary>Changes of each file; a JPEG takes a process each time.</summary>
    [Theory]
    [InlineData("fits", 24, 8)]
    [InlineData("png", 30, 8)]
    [InlineData("tiff", 30, 8)]
    [InlineData("jpeg", 24, 0)]
    public void Read_CorpusAndChangesOfIt_IsAPictureOrOneLine(string door, int files, int changes)
    {
        var paths = Directory
            .GetFiles(Checkout.At($"tests/Framing.Fuzz/Corpus/{door}"))
            .Order(StringComparer.Ordinal)
            .ToArray();
        Assert.Equal(files, paths.Length);
        if (Environment.GetEnvironmentVariable("FRAMING_LONG") == "1")
        {
            changes = (changes * 20) + 5;
        }

        using var session = new Session();
        var random = new Random(20261126);
        var whole = Array.ConvertAll(paths, File.ReadAllBytes);
        var (pictures, refusals) = (0, 0);
        for (var i = 0; i < whole.Length; i++)
        {
            for (var change = 0; change <= changes; change++)
            {
                var path = Path.Combine(session.Folder, "fuzzed" + Path.GetExtension(paths[i]));
                var other = whole[random.Next(whole.Length)];
                var bytes = change == 0 ? whole[i] : Changed(whole[i], other, random);
                if (door == "png")
                {
                    PngSums.Mend(bytes);
                }

                File.WriteAllBytes(path, bytes);
                if (IsPicture(path))
                {
                    pictures++;
                }
                else
                {
                    refusals++;
                }
            }
        }

        Assert.Equal(files * (changes + 1), pictures + refusals);
        Assert.True(pictures > 0 && refusals > 0, $"{door}: both come");
    }

    private static bool IsPicture(string path)
    {
        try
        {
            PictureFile.Read(path, _ => { }, 1_000_000);
            return true;
        }
        catch (UnreadableFileException refusal)
        {
            Assert.DoesNotContain('\n', refusal.Message);
            return false;
        }
    }

    /// <summary>One to four changes: a byte, a bit, a piece taken out, doubled, or brought over from another file.</summary>
    private static byte[] Changed(byte[] whole, byte[] other, Random random)
    {
        var bytes = whole.ToList();
        for (var count = random.Next(1, 5); count > 0 && bytes.Count > 0; count--)
        {
            var at = random.Next(bytes.Count);
            var length = random.Next(1, Math.Min(64, bytes.Count - at) + 1);
            switch (random.Next(5))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 2:
                    bytes.RemoveRange(at, length);
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                default:
                    var from = random.Next(other.Length);
                    bytes.InsertRange(at, other.Skip(from).Take(length));
                    break;
            }
        }

        return [.. bytes];
    }
}
