using System.Globalization;

namespace Framing.Jpeg;

/// <summary>
/// Decodes one JPEG in a process of its own, so that a fault of the native decoder ends nothing but itself.
/// </summary>
/// <remarks>
/// Called by the program with width, height, planes, rows wanted, memory in bytes and seconds of processor time. The JPEG
/// comes on standard input, rows go to standard output. Ends with 0 when all rows were given, with 3 when the data ended.
/// </remarks>
internal static class Program
{
    private const int DataEnd = 3;
    private const int WrongCall = 2;

    public static int Main(string[] arguments)
    {
        if (arguments is not [var width, var height, var planes, var rows, var memory, var seconds])
        {
            Console.Error.WriteLine(
                "This program decodes pictures for framing; it is of no use by itself."
            );
            return WrongCall;
        }

        Limits.Set(Number(memory), Number(seconds));
        using var input = Console.OpenStandardInput();
        using var jpeg = new MemoryStream();
        input.CopyTo(jpeg);
        using var output = new BufferedStream(Console.OpenStandardOutput(), 256 * 1024);
        var wanted = (int)Number(rows);
        var given = ScanlineDecoder.Decode(
            jpeg.GetBuffer().AsSpan(0, (int)jpeg.Length),
            (int)Number(width),
            (int)Number(height),
            (int)Number(planes),
            wanted,
            row => output.Write(row)
        );
        output.Flush();
        return given == wanted ? 0 : DataEnd;
    }

    private static long Number(string text) => long.Parse(text, CultureInfo.InvariantCulture);
}
