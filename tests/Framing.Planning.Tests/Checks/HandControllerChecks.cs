using System.Text.Json;
using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>Reference values of topic 9, hand controller: moves, holds, offsets from a frame (sources stand in the file).</summary>
public sealed class HandControllerChecks
{
    private static readonly JsonElement Entries = Read();

    public static TheoryData<string> Ids(string prefix) =>
        [
            .. Entries
                .EnumerateArray()
                .Select(entry => entry.GetProperty("id").GetString()!)
                .Where(id => id.StartsWith(prefix, StringComparison.Ordinal)),
        ];

    [Fact]
    public void File_AsRead_HoldsFifteenChecks() => Assert.Equal(15, Entries.GetArrayLength());

    [Theory]
    [MemberData(nameof(Ids), "mv-hold-")]
    public void Hold_OfAnAxisMove_TakesTheTime(string id)
    {
        var (inputs, expect) = Entry(id);
        var towards =
            inputs.GetProperty("direction").GetString() == "east"
                ? MountDirection.East
                : MountDirection.West;
        var handling = Checks.Handling with
        {
            KeyAddsToTracking = inputs.GetProperty("tracking").GetString() == "added",
        };
        var rate = KeyHolds.RateOf(
            handling,
            towards,
            inputs.GetProperty("rate_x_sidereal").GetDouble()
        );
        Assert.Equal(
            expect.GetProperty("seconds").GetDouble(),
            inputs.GetProperty("axis_move_deg").GetDouble() / rate.Degrees,
            1e-6
        );
    }

    [Fact]
    public void Rate_OnceSidereal_IsThatOfTheSky()
    {
        var (_, expect) = Entry("mv-sidereal");
        var rate = KeyHolds.RateOf(Checks.Handling, MountDirection.East, 1.0);
        Assert.Equal(expect.GetProperty("arcsec_per_s").GetDouble(), rate.Arcseconds, 1e-6);
        Assert.Equal(expect.GetProperty("deg_per_h").GetDouble(), rate.Degrees * 3600.0, 1e-6);
    }

    [Theory]
    [MemberData(nameof(Ids), "mv-east-")]
    public void Move_AlongTheSky_TurnsTheAxesExactly(string id)
    {
        // The checks go along the tangent plane; our move goes from frame to panel, so the panel is put where they end.
        var (inputs, expect) = Entry(id);
        var from = SkyDirection.FromDegrees(
            inputs.GetProperty("ra").GetDouble(),
            inputs.GetProperty("dec").GetDouble()
        );
        var time = OfDateFrame.At(TerrestrialTime.FromUtc(Checks.Evening));
        var to = new TangentPlane(from).Unproject(
            new(
                Math.Tan(double.DegreesToRadians(inputs.GetProperty("east_deg").GetDouble())),
                Math.Tan(double.DegreesToRadians(inputs.GetProperty("north_deg").GetDouble()))
            )
        );

        // Against the axes of date, so the places of the check are taken as of date.
        var plan = Checks.PlanAt(time.ToIcrs(to));
        var check = Checks.Check(plan, Checks.Frame(plan, time.ToIcrs(from), 0.0));
        Assert.Equal(
            expect.GetProperty("dra_deg").GetDouble(),
            check.RightAscensionNeeded.Degrees,
            1e-6
        );
        Assert.Equal(
            expect.GetProperty("ddec_deg").GetDouble(),
            check.DeclinationNeeded.Degrees,
            1e-6
        );
    }

    [Theory]
    [MemberData(nameof(Ids), "mv-cam-")]
    public void Frame_WithTheWantedPlaceInIt_SaysTheOffset(string id)
    {
        var (inputs, expect) = Entry(id);
        var scale = Angle.FromArcseconds(inputs.GetProperty("scale_arcsec_px").GetDouble());
        var east = Angle.FromArcminutes(expect.GetProperty("east_arcmin").GetDouble());
        var north = Angle.FromArcminutes(expect.GetProperty("north_arcmin").GetDouble());
        var up = PositionAngle.FromDegrees(inputs.GetProperty("pa_up").GetDouble());
        var mirrored = inputs.GetProperty("mirrored").GetBoolean();
        var field = new FieldShape(1000.0 * scale.Radians, 1000.0 * scale.Radians);
        var distance = Angle.FromRadians(double.Hypot(east.Radians, north.Radians));
        var motion = StarMotion.Of(
            up,
            mirrored,
            field,
            PositionAngle.FromAngle(Angle.FromRadians(Math.Atan2(east.Radians, north.Radians))),
            distance
        );

        // The stars go where the wanted place does not stand. A field of 1000 px: fractions in px by 1000; the check is
        // linear, the tangent of half a degree is not: 0.01 px.
        Assert.Equal(
            inputs.GetProperty("dx_right_px").GetDouble(),
            -1000.0 * motion.RightFraction,
            0.01
        );
        Assert.Equal(inputs.GetProperty("dy_up_px").GetDouble(), -1000.0 * motion.UpFraction, 0.01);
        Assert.Equal(
            expect.GetProperty("ra_axis_arcmin").GetDouble(),
            east.Arcminutes
                / Math.Cos(double.DegreesToRadians(inputs.GetProperty("dec").GetDouble())),
            1e-6
        );
    }

    [Fact]
    public void Move_AcrossZeroHours_GoesTheShortWay()
    {
        var (inputs, expect) = Entry("mv-wrap");
        var offset = MountOffset.Between(
            SkyDirection.FromDegrees(inputs.GetProperty("ra_from").GetDouble(), 0.0),
            SkyDirection.FromDegrees(inputs.GetProperty("ra_to").GetDouble(), 0.0)
        );
        Assert.Equal(
            expect.GetProperty("dra_deg").GetDouble(),
            offset.RightAscension.Degrees,
            1e-9
        );
    }

    private static (JsonElement Inputs, JsonElement Expect) Entry(string id)
    {
        var entry = Entries
            .EnumerateArray()
            .Single(entry => entry.GetProperty("id").GetString() == id);
        return (entry.GetProperty("inputs"), entry.GetProperty("expect"));
    }

    private static JsonElement Read()
    {
        using var stream =
            typeof(HandControllerChecks).Assembly.GetManifestResourceStream(
                "hand-controller.checks.json"
            )
            ?? throw new InvalidOperationException(
                "hand-controller.checks.json is not in the assembly."
            );
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.Clone();
    }
}
