using System.Diagnostics;
using System.Globalization;
using SharpFuzz;

namespace Framing.Fuzz;

/// <summary>
/// <c>Framing.Fuzz DOOR</c> takes inputs from afl-fuzz; <c>Framing.Fuzz DOOR FILE...</c> passes files through the door
/// once and says what came of each.
/// </summary>
internal static class Program
{
    public static int Main(string[] arguments)
    {
        if (arguments.Length == 0 || Doors.Of(arguments[0]) is not { } door)
        {
            Console.Error.WriteLine(
                "Name a door: fits, png, jpeg, tiff; and files, to pass these through it once."
            );
            return 2;
        }

        if (arguments.Length == 1)
        {
            Fuzzer.OutOfProcess.Run(stream =>
            {
                using var bytes = new MemoryStream();
                stream.CopyTo(bytes);
                Doors.Pass(door, bytes.ToArray());
            });
            return 0;
        }

        foreach (var path in arguments[1..])
        {
            var watch = Stopwatch.StartNew();
            var answer = Doors.Pass(door, File.ReadAllBytes(path));
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(answer ? "answer" : "refused")} {watch.ElapsedMilliseconds} ms {path}"
                )
            );
        }

        return 0;
    }
}
