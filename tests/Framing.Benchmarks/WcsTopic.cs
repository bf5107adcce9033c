using System.Globalization;
using System.Runtime.InteropServices;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>Pixels to sky and back, for a plain tangent plane and for one with a lens's distortion: one thread, beside wcslib.</summary>
internal static class WcsTopic
{
    private const int Points = 1_000_000;
    private const int Chunk = 100_000;
    private const int Runs = 5;
    private const int Rounds = 3;
    private const ulong Seed = 1;
    private const double Width = 6248.0;
    private const double Height = 4176.0;

    public static int Run(string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("wcs-").FullName;
        try
        {
            Beside(folder, "TAN", HeaderCards.Tangent);
            Beside(folder, "TAN-SIP", HeaderCards.Distorted);
            Beside(folder, "TAN-SIP without reverse terms", HeaderCards.DistortedOneWay);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    private static void Beside(string folder, string name, IReadOnlyList<string> cards)
    {
        Console.WriteLine(
            FormattableString.Invariant($"{name}: {Points} points, {Chunk} a call, one thread")
        );
        var path = Path.Combine(folder, "header");
        string[] file =
        [
            "SIMPLE  =                    T",
            "BITPIX  =                    8",
            "NAXIS   =                    0",
        ];
        File.WriteAllBytes(path, LightFrame.Header([.. file, .. cards]));
        var world = WorldCoordinatesReader.Read(HeaderFile.Read(path)).AsWritten!;
        var (x, y) = (new double[Points], new double[Points]);
        for (var i = 0; i < Points; i++)
        {
            x[i] = 0.5 + (Width * SplitMix.Uniform(Seed, 2UL * (ulong)i));
            y[i] = 0.5 + (Height * SplitMix.Uniform(Seed, (2UL * (ulong)i) + 1UL));
        }

        var (ra, dec) = (new double[Points], new double[Points]);
        var (backX, backY) = (new double[Points], new double[Points]);
        var failures = new MapFailure[Chunk];
        var ours = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        var rival = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        for (var round = 0; round < Rounds; round++)
        {
            var there = Stopwatches.Times("pixel to sky", Runs, () => InChunks(ToSky));
            var back = Stopwatches.Times("sky to pixel", Runs, () => InChunks(ToPixel));
            var figures = Rival.Run(
                "wcs.py",
                path,
                Points.ToString(CultureInfo.InvariantCulture),
                Chunk.ToString(CultureInfo.InvariantCulture),
                Runs.ToString(CultureInfo.InvariantCulture),
                Seed.ToString(CultureInfo.InvariantCulture)
            );
            Note("there", there.Median);
            Note("there least", there.Least);
            Note("back", back.Median);
            Note("back least", back.Least);

            void Note(string what, double milliseconds)
            {
                Add(ours, what, milliseconds);
                Add(rival, what, figures[what]);
            }
        }

        Agreement(world, path + ".answers", (ra, dec), (backX, backY), (x, y));
        Stopwatches.Ratio(name + ", pixel to sky", Median(ours, "there"), Median(rival, "there"));
        Stopwatches.Ratio(name + ", sky to pixel", Median(ours, "back"), Median(rival, "back"));
        Stopwatches.Ratio(
            "  least times, pixel to sky",
            Least(ours, "there least"),
            Least(rival, "there least")
        );
        Stopwatches.Ratio(
            "  least times, sky to pixel",
            Least(ours, "back least"),
            Least(rival, "back least")
        );

        int ToSky(int at, int count) =>
            world.PixelToSky(
                x.AsSpan(at, count),
                y.AsSpan(at, count),
                ra.AsSpan(at, count),
                dec.AsSpan(at, count),
                failures
            );
        int ToPixel(int at, int count) =>
            world.SkyToPixel(
                ra.AsSpan(at, count),
                dec.AsSpan(at, count),
                backX.AsSpan(at, count),
                backY.AsSpan(at, count),
                failures
            );
    }

    private static int InChunks(Func<int, int, int> map)
    {
        var failed = 0;
        for (var at = 0; at < Points; at += Chunk)
        {
            failed += map(at, Chunk);
        }

        return failed == 0 ? 0 : throw new InvalidOperationException("A point has no answer.");
    }

    private static void Add(Dictionary<string, List<double>> times, string what, double time)
    {
        if (!times.TryGetValue(what, out var noted))
        {
            times[what] = noted = [];
        }

        noted.Add(time);
    }

    private static double Median(Dictionary<string, List<double>> times, string what) =>
        times[what].Order().ElementAt(Rounds / 2);

    private static double Least(Dictionary<string, List<double>> times, string what) =>
        times[what].Min();

    private static void Agreement(
        WorldCoordinates world,
        string path,
        (double[] Ra, double[] Dec) there,
        (double[] X, double[] Y) back,
        (double[] X, double[] Y) given
    )
    {
        var answers = MemoryMarshal.Cast<byte, double>(File.ReadAllBytes(path));
        var (sky, pixel, trip) = (0.0, 0.0, 0.0);
        for (var i = 0; i < Points; i++)
        {
            var theirs = SkyDirection.FromDegrees(answers[2 * i], answers[(2 * i) + 1]);
            var ours = SkyDirection.FromDegrees(there.Ra[i], there.Dec[i]);
            sky = Math.Max(sky, ours.SeparationTo(theirs).Arcseconds);
            var at = 2 * (Points + i);
            pixel = Math.Max(
                pixel,
                double.Hypot(back.X[i] - answers[at], back.Y[i] - answers[at + 1])
            );
            trip = Math.Max(trip, double.Hypot(back.X[i] - given.X[i], back.Y[i] - given.Y[i]));
        }

        Console.WriteLine(
            FormattableString.Invariant(
                $"largest differences: {sky:0.0e+00} arcsec, {pixel:0.0e+00} px; our round trip {trip:0.0e+00} px; {world.Projection}"
            )
        );
    }
}
