using System.Diagnostics;
using System.Globalization;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Cli.Tests;

public sealed class TallyCommandTests
{
    private static readonly SkyDirection Panel = SkyDirection.FromDegrees(40.0, 61.0);

    private const string Filters = """
        goal_h_per_panel = 1

        [[night.filter]]
        name = "H-alpha"
        sub_s = 180
        """;

    [Fact]
    public void Tally_OfAFolder_AddsUpAndListsWhatDoesNotCount()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0, Filters));
        var shots = Directory.CreateDirectory(Path.Combine(session.Folder, "shots")).FullName;
        for (var i = 0; i < 6; i++)
        {
            Starry(Path.Combine(shots, Name("light", i)), i);
        }

        // A copy under another name; a frame of another night in a folder of its own; cloud, flat, dark, and no file at all.
        File.Copy(Path.Combine(shots, Name("light", 0)), Path.Combine(shots, "again.fits"));
        Starry(Path.Combine(shots, "trailed.fits"), 20, trail: 6);
        MadeFrames.Frame(session, "shots/cloud.fits", Panel, 20.0);
        Starry(Path.Combine(shots, "flat.fits"), 40, kind: "Flat Field");
        Starry(Path.Combine(shots, "dark.fits"), 41, kind: "DARK");
        File.WriteAllText(Path.Combine(shots, "half.fits"), "SIMPLE  =                    T");

        var outcome = session.Run("tally", plan, shots, "--json");

        Assert.Equal((0, string.Empty), (outcome.Code, outcome.Error));
        var tally = outcome.Json();
        var filter = tally
            .GetProperty("panels")[0]
            .GetProperty("byFilter")
            .EnumerateArray()
            .Single(entry => entry.GetProperty("filter").GetString() == "H-alpha");
        Assert.Equal(1, filter.GetProperty("rejected").GetInt32());
        Assert.Equal(6, filter.GetProperty("frames").GetInt32());
        Assert.Equal(1080.0, filter.GetProperty("exposureS").GetDouble());
        Assert.Equal(0.3, tally.GetProperty("panels")[0].GetProperty("goalFraction").GetDouble());
        Assert.Equal(1, tally.GetProperty("doubles").GetInt32());
        Assert.Equal(0.0, tally.GetProperty("gapArcmin2").GetDouble());
        var reasons = tally
            .GetProperty("unmatched")
            .EnumerateArray()
            .ToDictionary(
                frame => frame.GetProperty("file").GetString()!,
                frame => frame.GetProperty("reason").GetString()!,
                StringComparer.Ordinal
            );
        Assert.Equal(["cloud.fits", "half.fits", "trailed.fits"], reasons.Keys.Order());
        Assert.StartsWith("no stars", reasons["cloud.fits"], StringComparison.Ordinal);
        Assert.StartsWith("unreadable", reasons["half.fits"], StringComparison.Ordinal);
        Assert.StartsWith("trailed", reasons["trailed.fits"], StringComparison.Ordinal);
        Assert.Equal(
            ["flat.fits flat", "dark.fits dark"],
            tally
                .GetProperty("calibration")
                .EnumerateArray()
                .Select(frame =>
                    $"{frame.GetProperty("file").GetString()} {frame.GetProperty("kind").GetString()}"
                )
        );
        Assert.Equal(18, tally.GetProperty("next")[0].GetProperty("subsToShoot").GetInt32());

        var text = session.Run("tally", plan, shots, "--picture", "depth.png", "--size", "640x400");
        Assert.Contains(
            "Panel 1: 30 % of the goal, 100 % covered",
            text.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("18 subs of 180 s", text.Output, StringComparison.Ordinal);
        Assert.Contains("depth.png", session.Files());
    }

    [Fact]
    public void Tally_OfTheNextNight_AddsItAndForgetsWhatWasThrownAway()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0, Filters));
        string Night(string name, int first)
        {
            var folder = Directory.CreateDirectory(Path.Combine(session.Folder, name)).FullName;
            for (var i = first; i < first + 3; i++)
            {
                Starry(Path.Combine(folder, Name("light", i)), i);
            }

            return folder;
        }

        int Frames(string folder) =>
            session
                .Run("tally", plan, folder, "--json")
                .Json()
                .GetProperty("panels")[0]
                .GetProperty("byFilter")[0]
                .GetProperty("frames")
                .GetInt32();

        var one = Night("one", 0);
        var two = Night("two", 10);
        Assert.Equal(3, Frames(one));
        Assert.Equal(6, Frames(two));
        File.Move(Path.Combine(two, Name("light", 10)), Path.Combine(two, "renamed.fits"));
        Assert.Equal(6, Frames(two));
        File.Delete(Path.Combine(two, "renamed.fits"));
        Assert.Equal(5, Frames(two));
    }

    /// <summary>The program itself, killed at random moments and then left to finish. FRAMING_LONG=1: 300 frames, 50 kills.</summary>
    [Fact]
    public void Tally_KilledAtRandomMoments_EndsWithTheLedgerOfAnUndisturbedRun()
    {
        var isLong = Environment.GetEnvironmentVariable("FRAMING_LONG") == "1";
        var (frames, kills) = isLong ? (300, 50) : (40, 5);
        using var session = new Session();
        var shots = Directory.CreateDirectory(Path.Combine(session.Folder, "shots")).FullName;
        for (var i = 0; i < frames; i++)
        {
            Starry(Path.Combine(shots, Name("light", i)), i);
        }

        var calm = session.Write("calm.toml", MadeFrames.Plan(Panel, 20.0, Filters));
        var shaken = session.Write("shaken.toml", MadeFrames.Plan(Panel, 20.0, Filters));
        var clock = Stopwatch.StartNew();
        Assert.Equal(0, Program(calm, shots, null));
        var whole = clock.Elapsed;
        var random = new Random(50);
        var died = 0;
        for (var i = 0; i < kills; i++)
        {
            died += Program(shaken, shots, whole * (0.6 * random.NextDouble())) == 0 ? 0 : 1;
        }

        Assert.Equal(0, Program(shaken, shots, null));
        Assert.True(died > 0, "No run was killed while it worked.");
        Assert.Equal(
            File.ReadAllText(Path.Combine(session.Folder, "calm.ledger.json")),
            File.ReadAllText(Path.Combine(session.Folder, "shaken.ledger.json"))
        );
        Assert.DoesNotContain(
            Directory.EnumerateFiles(session.Folder),
            file => file.EndsWith(".part", StringComparison.Ordinal)
        );
    }

    private static int Program(string plan, string folder, TimeSpan? killAfter)
    {
        using var program = Process.Start(
            new ProcessStartInfo("dotnet", [Checkout.Program, "tally", plan, folder, "--json"])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        var output = program.StandardOutput.ReadToEndAsync();
        var error = program.StandardError.ReadToEndAsync();
        if (killAfter is { } moment && !program.WaitForExit(moment))
        {
            program.Kill();
        }

        program.WaitForExit();
        Assert.True(program.ExitCode is 0 or 137, error.GetAwaiter().GetResult());
        _ = output.GetAwaiter().GetResult();
        return program.ExitCode;
    }

    private static string Name(string word, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{word}-{number:000}.fits");

    /// <summary>A frame of the panel with sixty stars, and noise of its own.</summary>
    private static void Starry(string path, int number, int trail = 0, string kind = "Light Frame")
    {
        var stars = new Random(7);
        var noise = new Random(1000 + number);
        var level = new double[MadeFrames.Width * MadeFrames.Height];
        for (var star = 0; star < 60; star++)
        {
            var x = 6.0 + ((MadeFrames.Width - 12.0) * stars.NextDouble());
            var y = 6.0 + ((MadeFrames.Height - 12.0) * stars.NextDouble());
            var light = 1500.0 + (8000.0 * stars.NextDouble());
            for (var step = 0; step <= trail; step++)
            {
                Add(level, x + step - (trail / 2.0), y, light / (1.0 + (trail / 3.0)));
            }
        }

        var samples = Array.ConvertAll(
            level,
            value =>
                (ushort)
                    Math.Clamp(
                        Math.Round(
                            1000.0
                                + value
                                + (24.0 * (noise.NextDouble() + noise.NextDouble() - 1.0))
                        ),
                        0.0,
                        65535.0
                    )
        );
        var world = new TanWorldCoordinates(
            new((MadeFrames.Width + 1) / 2.0, (MadeFrames.Height + 1) / 2.0),
            Panel,
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(20.0),
                MadeFrames.Scale,
                mirrored: false
            )
        );
        FitsWriter.WriteImage<ushort>(
            path,
            MadeFrames.Width,
            MadeFrames.Height,
            1,
            samples,
            new FitsHeaderBuilder()
                .Add("IMAGETYP", kind)
                .Add(
                    "DATE-OBS",
                    MadeFrames
                        .Evening.AddMinutes(number)
                        .ToString("yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture)
                )
                .Add("EXPTIME", 180.0)
                .Add("FILTER", "h_alpha")
                .AddSolution(world)
        );
    }

    private static void Add(double[] level, double x, double y, double light)
    {
        for (var row = (int)y - 5; row <= (int)y + 5; row++)
        {
            for (var column = (int)x - 5; column <= (int)x + 5; column++)
            {
                if (row >= 0 && row < MadeFrames.Height && column >= 0 && column < MadeFrames.Width)
                {
                    var off = ((column - x) * (column - x)) + ((row - y) * (row - y));
                    level[(row * MadeFrames.Width) + column] +=
                        light * Math.Exp(-off / (2.0 * 1.3 * 1.3));
                }
            }
        }
    }
}
