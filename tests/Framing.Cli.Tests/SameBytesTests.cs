using System.Diagnostics;

namespace Framing.Cli.Tests;

/// <summary>The same plan gives the same bytes, whatever the machine's language and clock.</summary>
public sealed class SameBytesTests
{
    private static readonly string[] FilesOfAPlan =
    [
        "report.json",
        "panels.csv",
        "blocks.csv",
        "sky.png",
        "sky.svg",
        "night.png",
        "night.svg",
        "align-1.png",
        "align-2.png",
        "align-3.png",
    ];

    [Theory]
    [InlineData("de_DE.UTF-8", "Asia/Kathmandu")]
    [InlineData("C", "America/St_Johns")]
    [InlineData("tr_TR.UTF-8", "UTC")]
    public void Plan_UnderAnotherLocaleAndTimeZone_GivesTheSameBytes(string locale, string zone)
    {
        using var session = new Session();
        Assert.Equal(
            0,
            session.Run("plan", Checkout.At("samples/six-panels.toml"), "--out", "here").Code
        );

        var printed = Start(
            session,
            locale,
            zone,
            "plan",
            Checkout.At("samples/six-panels.toml"),
            "--out",
            "there"
        );

        foreach (var file in FilesOfAPlan)
        {
            Assert.Equal(
                File.ReadAllBytes(Path.Combine(session.Folder, "here", file)),
                File.ReadAllBytes(Path.Combine(session.Folder, "there", file))
            );
        }

        Assert.Contains("°", printed, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_AsTheReadmeSays_RunsTheBuiltInExample()
    {
        var command = File.ReadAllLines(Checkout.At("README.md"))
            .SkipWhile(line => line != "<!-- plan -->")
            .First(line => line.StartsWith("dotnet run ", StringComparison.Ordinal));
        Assert.Equal("dotnet run -c Release --project src/Framing.Cli -- plan", command);
        using var session = new Session();

        var printed = Start(session, "C", "UTC", command.Split(" -- ")[1].Split(' '));

        Assert.Contains("in 2 panels", printed.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(FilesOfAPlan.Length, session.Files().Count);
    }

    private static string Start(Session session, string locale, string zone, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [Checkout.Program, .. args])
        {
            UseShellExecute = false,
            WorkingDirectory = session.Folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        start.Environment["LC_ALL"] = locale;
        start.Environment["TZ"] = zone;
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(string.Empty, error.GetAwaiter().GetResult());
        Assert.Equal(0, process.ExitCode);
        return output;
    }
}
