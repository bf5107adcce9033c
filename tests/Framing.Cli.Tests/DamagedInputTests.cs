using Framing.Fits;
using Framing.Imaging;

namespace Framing.Cli.Tests;

/// <summary>
/// Truncations and byte flips of every case file, through the command and through the whole picture: an answer or one clear
/// line, each time. Seeded; 300 of them always, 10,000 with FRAMING_LONG=1.
/// </summary>
public sealed class DamagedInputTests
{
    private static int Rounds =>
        Environment.GetEnvironmentVariable("FRAMING_LONG") == "1" ? 10_000 : 300;

    [Fact]
    public void Inspect_DamagedCases_AnswersOrRefusesInOneLine()
    {
        var files = new[] { "Framing.Fits.Tests", "Framing.Imaging.Tests" }
            .SelectMany(tests => Directory.GetFiles(Checkout.At($"tests/{tests}/Data/cases")))
            .Where(path => !path.EndsWith(".json", StringComparison.Ordinal))
            .DistinctBy(Path.GetFileName, StringComparer.Ordinal)
            .OrderBy(Path.GetFileName, StringComparer.Ordinal)
            .ToArray();
        Assert.Equal(37, files.Length);
        var whole = Array.ConvertAll(files, File.ReadAllBytes);
        var random = new Random(20261125);
        using var session = new Session();
        var (answers, refusals) = (0, 0);
        for (var round = 0; round < Rounds; round++)
        {
            var at = round % files.Length;
            var path = Path.Combine(session.Folder, "damaged" + Path.GetExtension(files[at]));
            File.WriteAllBytes(path, Damage(whole[at], random));
            var outcome = session.Run("inspect", path, "--pixel", "7,31", "--json");
            if (outcome.Code == 0)
            {
                outcome.Json();
                answers++;
            }
            else
            {
                Assert.True(outcome.Code == 2, $"{files[at]}: {outcome.Error}");
                Assert.Equal("", outcome.Output);
                Assert.Equal(1, outcome.Error.Count(letter => letter == '\n'));
                refusals++;
            }

            ReadWhole(path);
            File.Delete(path);
        }

        Assert.Equal(Rounds, answers + refusals);
        Assert.InRange(answers, Rounds / 4, Rounds * 9 / 10);
    }

    private static void ReadWhole(string path)
    {
        try
        {
            PictureFile.Read(path, 1_000_000);
        }
        catch (UnreadableFileException refusal)
        {
            Assert.DoesNotContain('\n', refusal.Message);
        }
    }

    /// <summary>Cut anywhere, or one to four bytes changed, half of the time in the header.</summary>
    private static byte[] Damage(byte[] whole, Random random)
    {
        if (random.Next(3) == 0)
        {
            return whole[..random.Next(whole.Length)];
        }

        var bytes = (byte[])whole.Clone();
        for (var flips = random.Next(1, 5); flips > 0; flips--)
        {
            var at = random.Next(random.Next(2) == 0 ? Math.Min(3000, bytes.Length) : bytes.Length);
            bytes[at] =
                random.Next(2) == 0
                    ? (byte)random.Next(256)
                    : (byte)(bytes[at] ^ (1 << random.Next(8)));
        }

        return bytes;
    }
}
