using System.Globalization;
using System.Text.Json;
using Framing.Planning;
using Framing.Planning.Tests;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>
/// A whole evening at a simulated mount that points beside what is typed, whose keys run at other rates than their labels
/// say, whose gears have play, and whose camera stands wrong: done is what the program says, and nothing else.
/// </summary>
public sealed class EveningAtTheMountTests
{
    private const string More = """
        goal_h_per_panel = 1

        [mount]
        type = "wedge"
        """;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Evening_FollowingWhatTheProgramSays_EndsOnEveryPanel(int seed)
    {
        using var session = new Session();
        var evening = new AtTheMount(session, new Random(seed));
        var first = evening.Frame(1);
        var second = evening.Frame(2);

        // The first panel needs the camera turned and coordinates typed; the second profits from what the first has taught.
        Assert.Contains("turn", first);
        Assert.Contains("retype", first);
        Assert.Equal("within", first[^1]);
        Assert.Equal("within", second[^1]);
        Assert.DoesNotContain("turn", second);
        Assert.InRange(first.Count, 3, 7);
        Assert.InRange(second.Count, 1, 3);
    }

    /// <summary>The mount, the camera, and the user who does as told.</summary>
    private sealed class AtTheMount
    {
        private readonly Session session;
        private readonly Random random;
        private readonly string plan;
        private readonly SimulatedMount mount;
        private readonly double offsetRa;
        private readonly double offsetDec;
        private readonly IReadOnlyList<JsonElement> panels;
        private double cameraDeg;
        private DateTime now = MadeFrames.Evening;
        private int frames;

        public AtTheMount(Session session, Random random)
        {
            this.session = session;
            this.random = random;
            plan = session.Write(
                "plan.toml",
                MadeFrames
                    .Plan(SkyDirection.FromDegrees(40.0, 58.0), 0.0, More)
                    .Replace("[60, 40]", "[420, 150]", StringComparison.Ordinal)
                    .Replace("grid = [1, 1]", "grid = [2, 1]", StringComparison.Ordinal)
                    .Replace("size_arcmin", "angle_deg = 90\nsize_arcmin", StringComparison.Ordinal)
            );
            panels =
            [
                .. session
                    .Run("plan", plan, "--out", Path.Combine(session.Folder, "out"), "--json")
                    .Json()
                    .GetProperty("panels")
                    .EnumerateArray(),
            ];

            // Degrees: a degree and a half off on each axis, either way; keys 10 % off; 3' of play; 12° of camera.
            offsetRa = Sign() * (1.0 + random.NextDouble());
            offsetDec = Sign() * (0.6 + random.NextDouble());
            cameraDeg = Sign() * (4.0 + (8.0 * random.NextDouble()));
            mount = new(0.0, 0.0, -0.1 + (0.2 * random.NextDouble()), 3.0 / 60.0, true);
        }

        /// <summary>Types the panel's coordinates and does as told until the program says start; what it said, in order.</summary>
        public List<string> Frame(int panel)
        {
            var said = new List<string>();
            if (panel == 1)
            {
                var entry = panels[0].GetProperty("entry");
                Type(entry.GetProperty("ra").GetString()!, entry.GetProperty("dec").GetString()!);
            }
            else
            {
                // What the last check would have typed for this panel: its place less the learned offset.
                var place = panels[panel - 1].GetProperty("ofDate");
                Point(
                    place.GetProperty("raDeg").GetDouble() - learned.Ra,
                    place.GetProperty("decDeg").GetDouble() - learned.Dec
                );
            }

            string? before = null;
            while (said.Count < 9)
            {
                var frame = Shoot();
                string[] after = before is null ? [] : ["--after", before];
                var outcome = session.Run([
                    "check",
                    plan,
                    frame,
                    "--panel",
                    panel.ToString(CultureInfo.InvariantCulture),
                    "--json",
                    .. after,
                ]);
                Assert.Equal(0, outcome.Code);
                var check = outcome.Json().GetProperty("frames")[0];
                var offset = check.GetProperty("learnedOffset");
                learned = (
                    offset.GetProperty("raArcmin").GetDouble() / 60.0,
                    offset.GetProperty("decArcmin").GetDouble() / 60.0
                );
                var steps = check.GetProperty("steps");
                if (steps.GetArrayLength() == 0)
                {
                    said.Add(check.GetProperty("verdict").GetString()!);
                    return said;
                }

                var step = steps[0].GetString()!;
                said.Add(step);
                before = null;
                switch (step)
                {
                    case "turn":
                        // A hand sets the rings to a fifth of a degree.
                        cameraDeg +=
                            check.GetProperty("turnCameraDeg").GetDouble()
                            + (0.2 * ((2.0 * random.NextDouble()) - 1.0));
                        break;
                    case "retype":
                        Type(
                            check.GetProperty("retype").GetProperty("ra").GetString()!,
                            check.GetProperty("retype").GetProperty("dec").GetString()!
                        );
                        break;
                    default:
                        before = frame;
                        foreach (var move in check.GetProperty("moves").EnumerateArray())
                        {
                            Hold(move);
                        }

                        break;
                }

                mount.Wait(60.0);
                now = now.AddMinutes(1.0);
            }

            return said;
        }

        private (double Ra, double Dec) learned;

        private void Hold(JsonElement move)
        {
            var towards = move.GetProperty("towards").GetString() switch
            {
                "east" => MountDirection.East,
                "west" => MountDirection.West,
                "north" => MountDirection.North,
                _ => MountDirection.South,
            };
            mount.Press(
                new(
                    towards,
                    move.GetProperty("key").GetString()!,
                    new(
                        move.GetProperty("speed").GetString()!,
                        move.GetProperty("xSidereal").GetDouble()
                    ),
                    move.GetProperty("seconds").GetDouble() + (0.1 * random.NextDouble())
                )
            );
        }

        private void Type(string ra, string dec)
        {
            Assert.True(
                CoordinateReader.ReadDirection($"{ra}, {dec}").TryGet(out var typed, out _)
            );
            Point(typed.RightAscension.Degrees, typed.Declination.Degrees);
        }

        /// <summary>Where the mount points when it is sent somewhere, half a minute of arc of scatter included.</summary>
        private void Point(double ra, double dec) =>
            mount.Point(ra + offsetRa + Scatter(), dec + offsetDec + Scatter());

        private string Shoot()
        {
            now = now.AddMinutes(2.0);
            frames++;
            var centre = MadeFrames.Time.ToIcrs(mount.OfDate);

            // The camera keeps its angle to the pole of date.
            var up = centre.PositionAngleTo(
                MadeFrames.Time.ToIcrs(
                    mount.OfDate.Offset(
                        PositionAngle.FromDegrees(cameraDeg),
                        Angle.FromRadians(1e-4)
                    )
                )
            );
            return MadeFrames.Frame(
                session,
                string.Create(CultureInfo.InvariantCulture, $"{frames:00}.fits"),
                centre,
                up.Degrees,
                now
            );
        }

        private double Scatter() => ((2.0 * random.NextDouble()) - 1.0) / 120.0;

        private double Sign() => random.NextDouble() < 0.5 ? -1.0 : 1.0;
    }
}
