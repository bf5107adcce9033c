using System.Globalization;
using System.Text.Json;

namespace Framing.Cli.Tests;

/// <summary>Plans whose centre and angle the user has fixed.</summary>
public sealed class FixedFramingTests
{
    private const string Rig = """
        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63

        [target]
        names = ["IC 1805", "IC 1848", "HB 3"]

        [night]
        date = 2026-12-05

        """;

    [Fact]
    public void Plan_FixedWhereTheFreeOneLies_IsTheSame()
    {
        using var session = new Session();
        var free = session.Run("plan", session.Write("free.toml", Rig), "--json").Json();
        var angle = free.GetProperty("rotation").GetProperty("positionAngleDeg").GetDouble();
        var centre = free.GetProperty("mosaic").GetProperty("centre");

        var again = Fixed(
            session,
            centre.GetProperty("raDeg").GetDouble(),
            centre.GetProperty("decDeg").GetDouble(),
            angle
        );

        Assert.Equal(
            free.GetProperty("mosaic").GetProperty("panelCount").GetInt32(),
            again.GetProperty("mosaic").GetProperty("panelCount").GetInt32()
        );
        Assert.Equal(Corners(free), Corners(again), new Near(1e-7));
        Assert.Equal(
            free.GetProperty("rotation").GetProperty("marginArcmin").GetDouble(),
            again.GetProperty("rotation").GetProperty("marginArcmin").GetDouble(),
            5
        );
    }

    [Fact]
    public void Plan_FixedAside_TakesAsManyPanelsAsHoldTheTargetFromThere()
    {
        using var session = new Session();
        var free = session.Run("plan", session.Write("free.toml", Rig), "--json").Json();
        var centre = free.GetProperty("mosaic").GetProperty("centre");

        var aside = Fixed(
            session,
            centre.GetProperty("raDeg").GetDouble(),
            centre.GetProperty("decDeg").GetDouble() + 2.0,
            free.GetProperty("rotation").GetProperty("positionAngleDeg").GetDouble()
        );

        Assert.True(
            aside.GetProperty("mosaic").GetProperty("panelCount").GetInt32()
                > free.GetProperty("mosaic").GetProperty("panelCount").GetInt32()
        );
        Assert.Equal(
            1.0,
            aside.GetProperty("coverage").GetProperty("targetCoveredFraction").GetDouble(),
            9
        );
    }

    [Theory]
    [InlineData("centre = \"2h 41m\"", "mosaic.centre")]
    [InlineData("centre = 40", "mosaic.centre")]
    public void Plan_FixedNowhere_SaysSo(string line, string key)
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            session.Write("plan.toml", Rig + "[mosaic]\n" + line + "\n")
        );
        Assert.Equal(2, outcome.Code);
        Assert.Contains(
            key,
            Assert.Single(outcome.Error.TrimEnd('\n').Split('\n')),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Plan_FixedTooFarAside_SaysWhatIsFixed()
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            session.Write(
                "plan.toml",
                Rig + "[mosaic]\ngrid = [1, 1]\ncentre = \"2h 41m, +58.0\"\n"
            )
        );
        Assert.Equal(0, outcome.Code);
        Assert.Contains("mosaic.centre", outcome.Words, StringComparison.Ordinal);
    }

    private static JsonElement Fixed(Session session, double raDeg, double decDeg, double angleDeg)
    {
        string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
        return session
            .Run(
                "plan",
                session.Write(
                    "fixed.toml",
                    Rig
                        + $"[mosaic]\ncentre = \"{Text(raDeg)}, {Text(decDeg)}\"\n[rotation]\nstrategy = \"at-angle\"\nangle_deg = {Text(angleDeg)}\n"
                ),
                "--json"
            )
            .Json();
    }

    private static IEnumerable<double> Corners(JsonElement report) =>
        report
            .GetProperty("panels")
            .EnumerateArray()
            .SelectMany(panel => panel.GetProperty("cornersDeg").EnumerateArray())
            .SelectMany(corner => corner.EnumerateArray())
            .Select(value => value.GetDouble());

    private sealed class Near(double tolerance) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= tolerance;

        public int GetHashCode(double obj) => 0;
    }
}
