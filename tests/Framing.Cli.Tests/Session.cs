using System.Text;
using System.Text.Json;
using Framing.Cli.Terminals;

namespace Framing.Cli.Tests;

/// <summary>One user at one terminal, in a folder of its own.</summary>
internal sealed class Session : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("framing-");

    public string Folder => folder.FullName;

    public TimeProvider Time { get; init; } =
        new FixedTime(new(2026, 11, 20, 21, 0, 0, TimeSpan.Zero));

    public Outcome Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        output.NewLine = error.NewLine = "\n";
        var code = CommandLine.Run(args, new Terminal(output, error, Time, Folder));
        return new(code, output.ToString(), error.ToString());
    }

    public string Write(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text, new UTF8Encoding(false));
        return path;
    }

    /// <summary>Every file below the folder, by relative path.</summary>
    public IReadOnlyList<string> Files() =>
        [
            .. Directory
                .EnumerateFiles(Folder, "*", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(Folder, file).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    public JsonElement Json(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, path)));
        return document.RootElement.Clone();
    }

    public void Dispose() => folder.Delete(recursive: true);

    internal sealed record Outcome(int Code, string Output, string Error)
    {
        /// <summary>The output as one line.</summary>
        public string Words => Output.ReplaceLineEndings(" ");

        public JsonElement Json()
        {
            using var document = JsonDocument.Parse(Output);
            return document.RootElement.Clone();
        }
    }

    private sealed class FixedTime(DateTimeOffset now) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => now;
    }
}
