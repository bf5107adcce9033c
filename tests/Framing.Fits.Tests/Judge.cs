using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Framing.Fits.Tests;

/// <summary>Independent readers of FITS files, called as programs: fitsverify, cfitsio's tools, astropy.</summary>
internal static class Judge
{
    public const string Fitsverify = "/usr/bin/fitsverify";
    public const string Fpack = "/usr/bin/fpack";
    private const string Python = "/usr/bin/python3";

    /// <summary>What fitsverify counts in a file.</summary>
    public static (int Warnings, int Errors, string Text) Verify(string path)
    {
        Need(Fitsverify, "fitsverify");
        var text = Run(Fitsverify, out _, path);
        var sum = text.Split('\n')
            .LastOrDefault(line => line.Contains("Verification found", StringComparison.Ordinal));
        Assert.True(sum is not null, text);
        var numbers = sum.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(word =>
                int.TryParse(word, CultureInfo.InvariantCulture, out var number)
                    ? number
                    : (int?)null
            )
            .OfType<int>()
            .ToArray();
        return (numbers[0], numbers[1], text);
    }

    /// <summary>What astropy and cfitsio read of pictures.</summary>
    public static JsonElement[] ReadBack(params IReadOnlyList<string> paths)
    {
        Need(Python, "python3-astropy");
        var text = Run(Python, out var code, [TestData.Path("judges", "read_back.py"), .. paths]);
        Assert.True(code == 0, text);
        return [.. JsonDocument.Parse(text).RootElement.EnumerateArray()];
    }

    /// <summary>What wcslib makes of the solutions of pictures: places, their directions, and the ways back.</summary>
    public static JsonElement[] SkyOfPixels(params IReadOnlyList<string> paths)
    {
        Need(Python, "python3-astropy");
        var text = Run(
            Python,
            out var code,
            [TestData.Path("judges", "sky_of_pixels.py"), .. paths]
        );
        Assert.True(code == 0, text);
        return [.. JsonDocument.Parse(text).RootElement.EnumerateArray()];
    }

    public static void Need(string program, string package) =>
        Assert.SkipUnless(File.Exists(program), $"needs {program} of the Debian package {package}");

    public static string Run(string program, out int code, params IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        code = process.ExitCode;
        return code == 0 ? text : text + errors.Result;
    }
}
