using System.Diagnostics;
using System.Globalization;

namespace Framing.Benchmarks;

/// <summary>A general-purpose library at the same work: a script of the folder Rivals, run by Debian's Python, or a C program of it.</summary>
internal static class Rival
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Runs a script and shows what it prints.</summary>
    /// <param name="script">Its name in the folder Rivals.</param>
    /// <param name="arguments">What it is called with.</param>
    /// <returns>The figures that it gave: lines of the form "name = number".</returns>
    /// <exception cref="InvalidOperationException">The script failed; its message says what is missing.</exception>
    public static IReadOnlyDictionary<string, double> Run(
        string script,
        params string[] arguments
    ) => Execute(script, Python, [Beside(script), .. arguments]);

    /// <summary>Compiles a program of the folder Rivals with gcc, runs it and shows what it prints.</summary>
    /// <param name="source">Its name in the folder.</param>
    /// <param name="folder">Where the program is put.</param>
    /// <param name="arguments">What it is called with.</param>
    /// <returns>The figures that it gave: lines of the form "name = number".</returns>
    /// <exception cref="InvalidOperationException">It failed; the message says what is missing.</exception>
    public static IReadOnlyDictionary<string, double> RunCompiled(
        string source,
        string folder,
        params string[] arguments
    )
    {
        var program = Path.Combine(folder, "rival");
        Execute(
            "gcc",
            "gcc",
            [
                "-O3",
                "-march=native",
                "-ffast-math",
                "-fno-finite-math-only",
                "-std=gnu11",
                Beside(source),
                "-o",
                program,
                "-lm",
            ]
        );
        return Execute(source, program, arguments);
    }

    private static string Beside(string name) =>
        Path.Combine(AppContext.BaseDirectory, "Rivals", name);

    private static Dictionary<string, double> Execute(
        string name,
        string program,
        IEnumerable<string> arguments
    )
    {
        var start = new ProcessStartInfo(program)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var figures = new Dictionary<string, double>(StringComparer.Ordinal);
        while (process.StandardOutput.ReadLine() is { } line)
        {
            Console.WriteLine($"  rival: {line}");
            var parts = line.Split(" = ");
            if (
                parts.Length == 2
                && double.TryParse(
                    parts[1],
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture,
                    out var figure
                )
            )
            {
                figures[parts[0].Trim()] = figure;
            }
        }

        process.WaitForExit();
        return process.ExitCode == 0
            ? figures
            : throw new InvalidOperationException($"{name} failed: {errors.Result.Trim()}");
    }
}
