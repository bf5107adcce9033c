using System.Text;

namespace Framing.Workshop;

/// <summary>Where the files of a plan are read from: the disk, or what is embedded in the program.</summary>
internal abstract class PlanFiles
{
    /// <summary>The most bytes a TOML file may have.</summary>
    public const int MostTomlBytes = 1_000_000;

    /// <summary>The most bytes a table of numbers may have.</summary>
    public const int MostCsvBytes = 10_000_000;

    /// <summary>Opens a file.</summary>
    /// <param name="path">Its path; relative ones as the user's shell has them.</param>
    /// <returns>The file's bytes as a stream.</returns>
    /// <exception cref="IOException">It cannot be opened.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    protected abstract Stream Open(string path);

    /// <summary>The text of a file.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="mostBytes">How long it may be.</param>
    /// <param name="text">The text without a byte order mark; empty when there is a problem.</param>
    /// <returns>What is wrong with the file, or null.</returns>
    public PlanFileError? Read(string path, int mostBytes, out string text)
    {
        text = "";
        var whole = new PlanPlace(path, 0, 0);
        byte[] bytes;
        try
        {
            using var stream = Open(path);
            bytes = ReadAtMost(stream, mostBytes + 1);
        }
        catch (Exception fault)
            when (fault
                    is IOException
                        or UnauthorizedAccessException
                        or NotSupportedException
                        or ArgumentException
            )
        {
            return new(whole, "", null, Reason(path, fault));
        }

        if (bytes.Length > mostBytes)
        {
            return new(
                whole,
                "",
                null,
                FormattableString.Invariant(
                    $"the file is longer than {mostBytes} bytes: it is no plan"
                )
            );
        }

        return Decode(path, bytes, out text);
    }

    private static byte[] ReadAtMost(Stream stream, int most)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[16_384];
        int count;
        while (bytes.Length < most && (count = stream.Read(buffer)) > 0)
        {
            bytes.Write(buffer, 0, count);
        }

        return bytes.ToArray();
    }

    private static PlanFileError? Decode(string path, byte[] bytes, out string text)
    {
        var start = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble)
            ? Encoding.UTF8.Preamble.Length
            : 0;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(
                bytes,
                start,
                bytes.Length - start
            );
            return null;
        }
        catch (DecoderFallbackException fault)
        {
            text = "";
            var before = bytes.AsSpan(start, Math.Max(0, fault.Index));
            var line = before.Count((byte)'\n') + 1;
            var column =
                Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
            return new(
                new(path, line, column),
                "",
                null,
                "the file is not UTF-8 text; save it with the encoding UTF-8"
            );
        }
    }

    private static string Reason(string path, Exception fault) =>
        fault switch
        {
            FileNotFoundException or DirectoryNotFoundException => "there is no such file",
            UnauthorizedAccessException when Directory.Exists(path) =>
                "this is a folder, not a file",
            UnauthorizedAccessException => "the file may not be read",
            _ => "the file cannot be read",
        };
}
