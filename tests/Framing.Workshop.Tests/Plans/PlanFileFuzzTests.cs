using System.Text;
using FsCheck.Xunit;

namespace Framing.Workshop.Tests;

/// <summary>Whatever a file holds, it is a plan or it is refused in words.</summary>
public sealed class PlanFileFuzzTests
{
    private static readonly byte[] Full = Encoding.UTF8.GetBytes(PlanTexts.Full);

    [Property(MaxTest = 300)]
    public void Read_OfFlippedBytes_ReadsOrRefuses(int seed)
    {
        var random = new Random(seed);
        var bytes = Full.ToArray();
        for (var flips = random.Next(1, 8); flips > 0; flips--)
        {
            bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        }

        ReadsOrRefuses(bytes);
    }

    [Property(MaxTest = 200)]
    public void Read_OfMovedPieces_ReadsOrRefuses(int seed)
    {
        var random = new Random(seed);
        var bytes = Full.ToList();
        for (var moves = random.Next(1, 5); moves > 0; moves--)
        {
            var start = random.Next(bytes.Count);
            var piece = bytes.GetRange(start, random.Next(Math.Min(80, bytes.Count - start)));
            bytes.RemoveRange(start, piece.Count);
            bytes.InsertRange(random.Next(bytes.Count + 1), piece);
        }

        ReadsOrRefuses([.. bytes]);
    }

    [Property(MaxTest = 200)]
    public void Read_OfAnotherValueAnywhere_ReadsOrRefuses(int seed)
    {
        string[] values =
        [
            "nan",
            "-inf",
            "1e308",
            "-1",
            "0",
            "9223372036854775807",
            "\"\"",
            "\"x\"",
            "true",
            "[]",
            "[[]]",
            "{}",
            "[nan, nan]",
            "[1, \"2\"]",
            "2026-12-05",
            "12:00:00",
            "9999-12-31",
            "{ a = 1 }",
            "[{}]",
            "[\"\", \"\"]",
        ];
        var random = new Random(seed);
        var lines = PlanTexts.Full.Split('\n');
        for (var changes = random.Next(1, 6); changes > 0; changes--)
        {
            var line = random.Next(lines.Length);
            var sign = lines[line].IndexOf('=', StringComparison.Ordinal);
            if (sign > 0)
            {
                lines[line] = lines[line][..(sign + 1)] + " " + values[random.Next(values.Length)];
            }
        }

        ReadsOrRefuses(Encoding.UTF8.GetBytes(string.Join('\n', lines)));
    }

    private static void ReadsOrRefuses(byte[] bytes)
    {
        try
        {
            var files = new MemoryPlanFiles()
                .With("plan.toml", bytes)
                .With("horizon.csv", PlanTexts.Horizon);
            Assert.NotNull(files.Read().Title);
        }
        catch (PlanFileException refusal)
        {
            Assert.NotEmpty(refusal.Errors);
            Assert.DoesNotContain(refusal.Message, char.IsControl);
            Assert.DoesNotContain("Exception", refusal.Message, StringComparison.Ordinal);
        }
    }
}
