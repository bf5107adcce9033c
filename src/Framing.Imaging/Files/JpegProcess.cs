using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>Decodes JPEG files in a process of its own: a fault of the native decoder ends that process and nothing else.</summary>
/// <remarks>
/// The process is the small program framing-jpeg beside this one. It may take <see cref="MostBytes"/> beyond the file, and
/// is stopped when it works for <see cref="Patience"/> without giving a row, a second more for each 10 million pixels. On a
/// machine that is busy with other things it may take far longer by the clock, up to <see cref="Standstill"/> for a row.
/// </remarks>
internal sealed class JpegProcess
{
    /// <summary>Memory that the decoder may take beside two copies of the file: a progressive picture is held whole.</summary>
    public const long MostBytes = 640L << 20;

    private const int WatchMilliseconds = 50;
    private const int DataEnd = 3;

    private readonly string program;
    private readonly IReadOnlyList<string> leading;
    private readonly long mostBytes;

    /// <summary>Names the program that decodes.</summary>
    /// <param name="program">The file to start.</param>
    /// <param name="leading">What it is called with before the figures of the picture.</param>
    /// <param name="mostBytes">Memory that it may take beside two copies of the file.</param>
    public JpegProcess(string program, IReadOnlyList<string> leading, long mostBytes = MostBytes)
    {
        this.program = program;
        this.leading = leading;
        this.mostBytes = mostBytes;
    }

    /// <summary>Processor time in which no row may come.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(4);

    /// <summary>How long no row may come by the clock.</summary>
    public TimeSpan Standstill { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>The decoder that comes with the program.</summary>
    /// <param name="mostBytes">Memory that it may take beside two copies of the file.</param>
    public static JpegProcess OfTheProgram(long mostBytes = MostBytes)
    {
        const string name = "framing-jpeg";
        var folder = AppContext.BaseDirectory;
        // The runtime that runs this program runs the decoder too, wherever it is installed.
        var root = Path.GetFullPath(
            Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..")
        );
        var host = Path.Combine(root, OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet");
        return File.Exists(host)
            ? new(host, [Path.Combine(folder, name + ".dll")], mostBytes)
            : new(
                Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name),
                [],
                mostBytes
            );
    }

    /// <inheritdoc cref="JpegRows"/>
    public void Read(string name, Stream jpeg, JpegLayout layout, int rows, JpegRowTaker take)
    {
        var patience =
            Patience + TimeSpan.FromSeconds((double)layout.Width * layout.Height / 10_000_000.0);
        var memory = mostBytes + (2 * jpeg.Length);
        using var process = Start(name, layout, rows, memory, patience);
        var watch = new Watch(process, memory, patience, Standstill);
        using var timer = new Timer(watch.Look, null, WatchMilliseconds, WatchMilliseconds);
        var sent = Task.Run(() => Send(jpeg, process));
        var given = 0;
        try
        {
            var row = new byte[layout.Width * layout.Planes];
            var output = process.StandardOutput.BaseStream;
            while (given < rows && output.ReadAtLeast(row, row.Length, false) == row.Length)
            {
                watch.Touch();
                take(given, row);
                given++;
            }

            if (given == rows)
            {
                return;
            }

            process.WaitForExit();
            throw Refusal(name, layout, given, process.ExitCode, watch.Why);
        }
        finally
        {
            Stop(process);
            sent.Wait();
        }
    }

    private Process Start(string name, JpegLayout layout, int rows, long memory, TimeSpan patience)
    {
        var start = new ProcessStartInfo(program)
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            CreateNoWindow = true,
        };
        foreach (var argument in leading)
        {
            start.ArgumentList.Add(argument);
        }

        foreach (
            var figure in (long[])
                [
                    layout.Width,
                    layout.Height,
                    layout.Planes,
                    rows,
                    memory,
                    (long)Math.Ceiling(patience.TotalSeconds) + 30,
                ]
        )
        {
            start.ArgumentList.Add(figure.ToString(CultureInfo.InvariantCulture));
        }

        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        try
        {
            if (leading is [var library] && !File.Exists(library))
            {
                throw new FileNotFoundException("no decoder", library);
            }

            var process = Process.Start(start)!;
            process.ErrorDataReceived += static (_, _) => { };
            process.BeginErrorReadLine();
            return process;
        }
        catch (Exception problem)
            when (problem is System.ComponentModel.Win32Exception or IOException)
        {
            throw new UnreadableFileException(
                name,
                "JPEG",
                "its decoder, framing-jpeg, does not start",
                "it stands beside the program; install the program again, or save the picture as PNG",
                problem
            );
        }
    }

    private static void Send(Stream jpeg, Process process)
    {
        try
        {
            jpeg.Position = 0;
            using var input = process.StandardInput.BaseStream;
            jpeg.CopyTo(input);
        }
        catch (Exception problem) when (problem is IOException or ObjectDisposedException)
        {
            // The decoder has ended or was stopped: what it gave tells the rest.
        }
    }

    private static void Stop(Process process)
    {
        try
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }
        catch (Exception problem)
            when (problem is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // It has ended meanwhile.
        }
    }

    private static UnreadableFileException Refusal(
        string name,
        JpegLayout layout,
        int given,
        int code,
        string? why
    ) =>
        why is null && code is 0 or DataEnd
            ? new(
                name,
                "picture data",
                FormattableString.Invariant(
                    $"cut short or damaged, {given} of {layout.Height} rows can be read"
                ),
                "copy it again from where it came, or save it again"
            )
            : new(
                name,
                "picture data",
                $"the decoder {why ?? "broke down"} on them",
                "the file is damaged or made to harm; save the picture again"
            );

    /// <summary>Looks at the decoder again and again, and stops it when it takes too much.</summary>
    private sealed class Watch(Process process, long memory, TimeSpan patience, TimeSpan standstill)
    {
        private long touched = Stopwatch.GetTimestamp();
        private long seen;
        private TimeSpan usedBefore;

        /// <summary>What it was stopped for; null when it was not.</summary>
        public string? Why { get; private set; }

        public void Touch() => Interlocked.Exchange(ref touched, Stopwatch.GetTimestamp());

        public void Look(object? state)
        {
            try
            {
                if (process.HasExited)
                {
                    return;
                }

                process.Refresh();
                if (process.WorkingSet64 > memory)
                {
                    Why ??= FormattableString.Invariant($"took more than {memory >> 20} MB");
                    process.Kill();
                }
                else if (IsStuck(out var waited))
                {
                    Why ??= FormattableString.Invariant(
                        $"gave nothing for {waited.TotalSeconds:0} s"
                    );
                    process.Kill();
                }
            }
            catch (Exception problem)
                when (problem is InvalidOperationException or System.ComponentModel.Win32Exception)
            {
                // It has ended meanwhile.
            }
        }

        /// <summary>True when it worked for long since the last row, or nothing moved for very long.</summary>
        private bool IsStuck(out TimeSpan waited)
        {
            var used = process.TotalProcessorTime;
            var last = Interlocked.Read(ref touched);
            if (last != seen)
            {
                (seen, usedBefore) = (last, used);
            }

            waited = used - usedBefore;
            if (waited > patience)
            {
                return true;
            }

            waited = Stopwatch.GetElapsedTime(last);
            return waited > standstill;
        }
    }
}
