using System.Globalization;
using Framing.Fits;

namespace Framing.Benchmarks;

/// <summary>
/// A frame of 26 million samples from file to float, into memory that was touched before: one thread, beside cfitsio. A file
/// named as argument is read instead of the made ones.
/// </summary>
internal static class FitsTopic
{
    private const int Width = 6248;
    private const int Height = 4176;
    private const int Runs = 9;
    private const int Rounds = 5;

    public static int Run(string[] arguments)
    {
        if (arguments.Length > 0)
        {
            Compare(arguments[0]);
            return 0;
        }

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

    /// <summary>Rounds of both in turn; the middle one of the rounds' ratios counts.</summary>
    private static void Compare(string path)
    {
        var values = Touched(path);
        var (elapsed, busy) = (new List<double>(), new List<double>());
        var rivalSum = 0.0;
        for (var round = 0; round < Rounds; round++)
        {
            var processor = new List<double>();
            var ours = Stopwatches.Time(
                "file to float",
                Runs,
                () =>
                {
                    var before = Environment.CpuUsage.TotalTime;
                    using (var file = FitsFile.Open(path))
                    {
                        file.RequireImage().ReadRows(0, 0, values);
                    }

                    processor.Add((Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
                    return values;
                }
            );
            var last = processor[^Runs..].Order().ElementAt(Runs / 2);
            Console.WriteLine(FormattableString.Invariant($"  processor = {last:0.0000}"));
            var rival = Rival.Run("fits.py", path, Runs.ToString(CultureInfo.InvariantCulture));
            elapsed.Add(rival["median"] / ours.Milliseconds);
            busy.Add(rival["processor"] / last);
            rivalSum = rival["sum"];
        }

        var sum = values.Sum(value => (double)value);
        Console.WriteLine(
            FormattableString.Invariant(
                $"sums differ by {Math.Abs(sum - rivalSum):0.0} of {sum:0.0}"
            )
        );
        Stopwatches.Ratio(
            "against cfitsio, by the clock",
            1.0,
            elapsed.Order().ElementAt(Rounds / 2)
        );
        Stopwatches.Ratio(
            "against cfitsio, processor time",
            1.0,
            busy.Order().ElementAt(Rounds / 2)
        );
    }

    private static float[] Touched(string path)
    {
        using var file = FitsFile.Open(path);
        var image = file.RequireImage();
        var values = new float[image.Width * image.Height];
        Array.Fill(values, 1f);
        return values;
    }
}
