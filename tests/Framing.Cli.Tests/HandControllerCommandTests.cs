using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>Topic 9, hand controller, of the reference values (sources stand in the file) through the commands.</summary>
public sealed class HandControllerCommandTests
{
    private static readonly List<JsonElement> Entries = Read();

    public static TheoryData<string> Ids(string prefix) =>
        [
            .. Entries
                .Select(entry => entry.GetProperty("id").GetString()!)
                .Where(id => id.StartsWith(prefix, StringComparison.Ordinal)),
        ];

    [Fact]
    public void File_AsRead_HoldsFifteenChecks()
    {
        Assert.Equal(15, Entries.Count);

        // Each is asked below.
        string[] asked = ["mv-sidereal", "mv-east-", "mv-hold-", "mv-cam-", "mv-side-", "mv-wrap"];
        Assert.All(
            Entries,
            entry =>
                Assert.Contains(
                    asked,
                    prefix =>
                        entry
                            .GetProperty("id")
                            .GetString()!
                            .StartsWith(prefix, StringComparison.Ordinal)
                )
        );
    }

    /// <summary>A key that turned the axis as far and as long as the check says runs at the check's rate.</summary>
    [Theory]
    [MemberData(nameof(Ids), "mv-hold-")]
    public void Keys_OfAHold_HaveTheRate(string id)
    {
        var (inputs, expect) = Entry(id);
        var adds = inputs.GetProperty("tracking").GetString() == "added";
        var east = inputs.GetProperty("direction").GetString() == "east";
        Assert.Equal(
            inputs.GetProperty("rate_x_sidereal").GetDouble(),
            Rate(
                (east ? 1.0 : -1.0) * inputs.GetProperty("axis_move_deg").GetDouble(),
                expect.GetProperty("seconds").GetDouble(),
                adds,
                inputs.GetProperty("rate_x_sidereal").GetDouble()
            ),
            1e-5
        );
    }

    [Fact]
    public void Keys_AtTheRateOfTheSky_RunOnceSidereal()
    {
        var (_, expect) = Entry("mv-sidereal");
        Assert.Equal(
            1.0,
            Rate(expect.GetProperty("arcsec_per_s").GetDouble() * 600.0 / 3600.0, 600.0, true, 1.0),
            1e-6
        );
        Assert.Equal(
            expect.GetProperty("deg_per_h").GetDouble(),
            expect.GetProperty("arcsec_per_s").GetDouble(),
            1e-9
        );
    }

    [Theory]
    [MemberData(nameof(Ids), "mv-east-")]
    public void Check_AlongTheSky_TurnsTheAxesExactly(string id)
    {
        var (inputs, expect) = Entry(id);
        var from = SkyDirection.FromDegrees(
            inputs.GetProperty("ra").GetDouble(),
            inputs.GetProperty("dec").GetDouble()
        );
        var to = new TangentPlane(from).Unproject(
            new(
                Math.Tan(double.DegreesToRadians(inputs.GetProperty("east_deg").GetDouble())),
                Math.Tan(double.DegreesToRadians(inputs.GetProperty("north_deg").GetDouble()))
            )
        );
        var needed = Needed(from, to);
        Assert.Equal(
            expect.GetProperty("dra_deg").GetDouble(),
            needed.GetProperty("raAxisArcmin").GetDouble() / 60.0,
            1e-6
        );
        Assert.Equal(
            expect.GetProperty("ddec_deg").GetDouble(),
            needed.GetProperty("decAxisArcmin").GetDouble() / 60.0,
            1e-6
        );
    }

    [Fact]
    public void Check_AcrossZeroHours_GoesTheShortWay()
    {
        var (inputs, expect) = Entry("mv-wrap");
        Assert.Equal(
            expect.GetProperty("dra_deg").GetDouble(),
            Needed(
                    SkyDirection.FromDegrees(inputs.GetProperty("ra_from").GetDouble(), 10.0),
                    SkyDirection.FromDegrees(inputs.GetProperty("ra_to").GetDouble(), 10.0)
                )
                .GetProperty("raAxisArcmin")
                .GetDouble() / 60.0,
            1e-6
        );
    }

    [Theory]
    [MemberData(nameof(Ids), "mv-cam-")]
    public void Check_OfAPlaceInTheFrame_SaysTheOffset(string id)
    {
        var (inputs, expect) = Entry(id);
        using var session = new Session();
        var mirrored = inputs.GetProperty("mirrored").GetBoolean();
        var middle = SkyDirection.FromDegrees(100.0, inputs.GetProperty("dec").GetDouble());
        var angle = PositionAngle.FromDegrees(inputs.GetProperty("pa_up").GetDouble());
        var scale = Angle.FromArcseconds(inputs.GetProperty("scale_arcsec_px").GetDouble());

        // The frame of the check, against the axes of date: its middle, and the wanted pixel's place, carried to J2000.
        var ofDate = new TanWorldCoordinates(
            new(0.0, 0.0),
            middle,
            PixelMatrix.FromPositionAngle(angle, scale, mirrored)
        );
        var wanted = ofDate.PixelToSky(
            new(
                inputs.GetProperty("dx_right_px").GetDouble(),
                inputs.GetProperty("dy_up_px").GetDouble()
            )
        );
        var centre = MadeFrames.Time.ToIcrs(middle);
        var up = centre.PositionAngleTo(
            MadeFrames.Time.ToIcrs(middle.Offset(angle, Angle.FromArcseconds(20.0)))
        );
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(
                MadeFrames.Time.ToIcrs(wanted),
                up.Degrees,
                rig: MadeFrames.Rig + (mirrored ? "\nmirrored = true" : string.Empty)
            )
        );
        var found = session
            .Run(
                "check",
                plan,
                MadeFrames.Frame(session, "a.fits", centre, up.Degrees, mirrored: mirrored),
                "--json"
            )
            .Json()
            .GetProperty("frames")[0];
        var needed = found.GetProperty("moveNeeded");

        // The check is linear; tangents of 13′ differ from it by 1e-5.
        Assert.Equal(
            expect.GetProperty("east_arcmin").GetDouble(),
            needed.GetProperty("eastArcmin").GetDouble(),
            0.002
        );
        Assert.Equal(
            expect.GetProperty("north_arcmin").GetDouble(),
            needed.GetProperty("northArcmin").GetDouble(),
            0.002
        );

        // The whole move of the axis: the linear one within the parallel's curvature, 13′ · tan 60° · 13′ / 2.
        Assert.Equal(
            expect.GetProperty("ra_axis_arcmin").GetDouble(),
            needed.GetProperty("raAxisArcmin").GetDouble(),
            0.2
        );

        // The stars go where the wanted place does not stand.
        Assert.StartsWith(
            "left",
            found.GetProperty("starsMustMove").GetString(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [MemberData(nameof(Ids), "mv-side-")]
    public void Where_OnASideOfTheMeridian_SaysTheHourAngle(string id)
    {
        var (inputs, expect) = Entry(id);
        using var session = new Session();
        var lst = inputs.GetProperty("lst_deg").GetDouble();

        // Mean sidereal time at Greenwich: 280.46062° + 360.98564737° a day from 2000-01-01 12:00 (Meeus, Astronomical
        // Algorithms, 12.4); the equation of the equinoxes is below 0.005°.
        var days = (
            MadeFrames.Evening - new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc)
        ).TotalDays;
        var greenwich = 280.46061837 + (360.98564736629 * days);
        var longitude = Angle.FromDegrees(lst - greenwich).WrappedSigned.Degrees;
        var site = session.Write(
            "site.toml",
            string.Create(
                CultureInfo.InvariantCulture,
                $"latitude_deg = 46\nlongitude_deg = {longitude:F9}\n"
            )
        );
        var place = MadeFrames.Time.ToIcrs(
            SkyDirection.FromDegrees(inputs.GetProperty("ra").GetDouble(), 0.0)
        );
        var hours = session
            .Run(
                "where",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{place.RightAscension.Degrees:F9},{place.Declination.Degrees:F9}"
                ),
                "--site",
                site,
                "--at",
                "2026-12-05T21:00Z",
                "--json"
            )
            .Json()
            .GetProperty("hourAngleHours")
            .GetDouble();
        Assert.Equal(expect.GetProperty("hour_angle_deg").GetDouble(), hours * 15.0, 0.01);
        Assert.Equal(expect.GetProperty("side").GetString(), hours > 0.0 ? "west" : "east");
    }

    private static double Rate(double eastDeg, double seconds, bool adds, double speed)
    {
        using var session = new Session();
        var from = SkyDirection.FromDegrees(100.0, 20.0);
        var to = SkyDirection.FromDegrees(100.0 + eastDeg, 20.0);
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(
                MadeFrames.Time.ToIcrs(from),
                0.0,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"[mount]\nkey_adds_to_tracking = {(adds ? "true" : "false")}\nspeeds = [ {{ label = \"s\", x_sidereal = {speed} }} ]"
                )
            )
        );
        var outcome = session.Run(
            "keys",
            plan,
            MadeFrames.Frame(session, "a.fits", MadeFrames.Time.ToIcrs(from), 0.0),
            MadeFrames.Frame(
                session,
                "b.fits",
                MadeFrames.Time.ToIcrs(to),
                0.0,
                MadeFrames.Evening.AddSeconds(1.0)
            ),
            "--pressed",
            eastDeg > 0.0 ? "east" : "west",
            "--seconds",
            seconds.ToString("R", CultureInfo.InvariantCulture),
            "--json"
        );
        Assert.Equal(0, outcome.Code);
        return outcome.Json().GetProperty("xSidereal").GetDouble();
    }

    private static JsonElement Needed(SkyDirection fromOfDate, SkyDirection toOfDate)
    {
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(MadeFrames.Time.ToIcrs(toOfDate), 0.0)
        );
        return session
            .Run(
                "check",
                plan,
                MadeFrames.Frame(session, "a.fits", MadeFrames.Time.ToIcrs(fromOfDate), 0.0),
                "--json"
            )
            .Json()
            .GetProperty("frames")[0]
            .GetProperty("moveNeeded");
    }

    private static (JsonElement Inputs, JsonElement Expect) Entry(string id)
    {
        var entry = Entries.Single(entry => entry.GetProperty("id").GetString() == id);
        return (entry.GetProperty("inputs"), entry.GetProperty("expect"));
    }

    private static List<JsonElement> Read()
    {
        using var document = JsonDocument.Parse(
            File.ReadAllBytes(
                Checkout.At("tests/Framing.Cli.Tests/Data/hand-controller.checks.json")
            )
        );
        return [.. document.RootElement.Clone().EnumerateArray()];
    }
}
