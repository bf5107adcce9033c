using System.Globalization;
using Framing.Fits;

namespace Framing.Benchmarks;

/// <summary>A frame of 26 million samples from file to float, into memory that was touched before: one thread, beside cfitsio.</summary>
internal static class FitsTopic
{
    private const int Width = 6248;
    private const int Height = 4176;
    private const int Runs = 9;
    private const int Rounds = 3;

    public static int Run(string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("frames-").FullName;
        try
        {
            foreach (var (name, write) in Frames())
            {
                var path = Path.Combine(folder, name + ".fits");
                write(path);
                Console.WriteLine(
                    FormattableString.Invariant($"{name}: {Width} x {Height}, warm page cache")
                );
                Compare(path);
                File.Delete(path);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    private static IEnumerable<(string Name, Action<string> Write)> Frames()
    {
        yield return ("uint16", path => Write(path, i => (ushort)(SplitMix.Uniform(1, i) * 65536)));
        yield return (
            "int16",
            path => Write(path, i => (short)((SplitMix.Uniform(1, i) * 65536) - 32768))
        );
        yield return ("float32", path => Write(path, i => (float)SplitMix.Uniform(1, i)));
    }

    private static void Write<T>(string path, Func<ulong, T> sample)
        where T : unmanaged
    {
        var samples = new T[Width * Height];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = sample((ulong)i);
        }

        FitsWriter.WriteImage<T>(path, Width, Height, 1, samples);
    }

    private static void Compare(string path)
    {
        var values = new float[Width * Height];
        Array.Fill(values, 1f);
        var ours = new List<double>();
        var rival = new List<double>();
        var (sum, rivalSum) = (0.0, 0.0);
        for (var round = 0; round < Rounds; round++)
        {
            ours.Add(
                Stopwatches
                    .Time(
                        "file to float",
                        Runs,
                        () =>
                        {
                            using var file = FitsFile.Open(path);
                            file.RequireImage().ReadRows(0, 0, values);
                            return values;
                        }
                    )
                    .Milliseconds
            );
            var figures = Rival.Run("fits.py", path, Runs.ToString(CultureInfo.InvariantCulture));
            rival.Add(figures["median"]);
            rivalSum = figures["sum"];
        }

        sum = values.Sum(value => (double)value);
        Console.WriteLine(
            FormattableString.Invariant(
                $"sums differ by {Math.Abs(sum - rivalSum):0.0} of {sum:0.0}"
            )
        );
        ours.Sort();
        rival.Sort();
        Stopwatches.Ratio("against cfitsio", ours[Rounds / 2], rival[Rounds / 2]);
    }
}
