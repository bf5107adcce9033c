using System.Globalization;

namespace Framing.Benchmarks;

/// <summary>Runs one topic beside its rival and prints both times and their ratio.</summary>
internal static class Program
{
    /// <summary>A line a topic: what it is called, what it measures, what runs it with the rest of the arguments.</summary>
    private static readonly (string Name, string Says, Func<string[], int> Run)[] Topics =
    [
        (
            "coverage",
            "area, gaps and overlaps of rectangles and hemispheres; rival: Shapely",
            CoverageTopic.Run
        ),
        (
            "nights",
            "forty panels over five nights: the whole plan, and its gap to the bound",
            NightsTopic.Run
        ),
        ("night", "Sun, Moon and a target through a night; rival: ERFA", NightTopic.Run),
        ("fits", "a frame of 26 million samples from file to float; rival: cfitsio", FitsTopic.Run),
        (
            "resample",
            "a frame of 26 million pixels onto a canvas; rivals: a plain C loop, reproject_interp",
            ResampleTopic.Run
        ),
        ("wcs", "pixels to sky and back, TAN and TAN-SIP; rival: wcslib", WcsTopic.Run),
    ];

    public static int Main(string[] arguments)
    {
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        foreach (var (name, _, run) in Topics)
        {
            if (arguments.Length > 0 && arguments[0] == name)
            {
                return run(arguments[1..]);
            }
        }

        Console.Error.WriteLine("Name a topic:");
        foreach (var (name, says, _) in Topics)
        {
            Console.Error.WriteLine($"  {name, -12} {says}");
        }

        return 2;
    }
}
