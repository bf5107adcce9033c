using System.Text.Json;
using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Topic 7 of the reference values: rates, trails, drifts of a mount whose axis misses the pole.</summary>
public sealed class PolarChecksTests
{
    private static readonly IReadOnlyDictionary<string, Check> Entries = TestTable.Checks(
        "polar.checks.json"
    );

    public static TheoryData<string> Ids() => [.. Entries.Keys];

    [Fact]
    public void Entries_AreAllThere() => Assert.Equal(17, Entries.Count);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Entry_Always_Holds(string id)
    {
        var check = Entries[id];
        switch (id.Split('-')[1])
        {
            case "rates":
                Rates(check);
                break;
            case "trail":
                Relative(check, "max_trail_um", Guided(check));
                break;
            case "unguided":
                Unguided(check);
                break;
            case "vector":
                Vector(check);
                break;
            case "hook":
                Hook(check);
                break;
            default:
                Assert.Fail($"Nothing answers {id}.");
                break;
        }
    }

    private static void Rates(Check check)
    {
        var error = Angle.FromArcminutes(check.In("error_arcmin"));
        var declination = Angle.FromDegrees(check.In("dec"));
        var across = PolarDrift.Of(error, Angle.Zero, Angle.FromDegrees(-90.0), declination);
        var along = PolarDrift.Of(error, Angle.Zero, Angle.Zero, declination);
        check.Near(
            "dec_drift_max_arcsec_per_min",
            Angle.FromRadians(60.0 * across.Declination).Arcseconds
        );
        check.Near(
            "ra_drift_max_onsky_arcsec_per_min",
            Angle.FromRadians(60.0 * along.HourAngle).Arcseconds
        );
        check.Near(
            "rotation_max_arcmin_per_hour",
            Angle.FromRadians(3600.0 * along.GuidedRotation).Arcminutes
        );
    }

    // A square sensor whose diagonal is the distance asked for, the guide star in its corner.
    private static double Guided(Check check) =>
        StarTrail
            .Of(
                new(
                    new Rig(
                        300.0,
                        new(1000, 1000, check.In("distance_from_guide_mm") / Math.Sqrt(2.0))
                    ),
                    GuideStar.Corner,
                    Angle.FromArcminutes(check.In("error_arcmin")),
                    Angle.FromDegrees(check.In("dec")),
                    1.0
                )
            )
            .Micrometres(TimeSpan.FromSeconds(check.In("sub_s")));

    private static void Unguided(Check check)
    {
        // The entry is the drift alone: on one pixel the turn of the field adds less than 1e-9.
        var trail = StarTrail.Of(
            new(
                new Rig(check.In("focal_mm"), new(1, 1, check.In("pixel_um"))),
                null,
                Angle.FromArcminutes(check.In("error_arcmin")),
                Angle.Zero,
                1.0
            )
        );
        var sub = TimeSpan.FromSeconds(check.In("sub_s"));
        Relative(check, "max_drift_um", trail.Micrometres(sub));
        Relative(check, "px", trail.Px(sub));
    }

    private static void Vector(Check check)
    {
        var drift = PolarDrift.Of(
            Angle.FromArcminutes(check.In("error_arcmin")),
            Angle.FromDegrees(check.In("mount_pole_ha_deg")),
            Angle.FromDegrees(check.In("star_ha_deg")),
            Angle.FromDegrees(check.In("dec"))
        );
        var seconds = check.In("seconds");
        foreach (
            var (name, rate) in new[]
            {
                ("star_moves_mount_dec_arcsec", drift.Declination),
                ("star_moves_mount_ha_onsky_arcsec", drift.HourAngle),
            }
        )
        {
            var expected = check.Expect.GetProperty(name).GetDouble();
            Assert.Equal(
                expected,
                Angle.FromRadians(rate * seconds).Arcseconds,
                check.Allowed.GetProperty("abs").GetDouble()
                    + (check.Allowed.GetProperty("rel").GetDouble() * Math.Abs(expected))
            );
        }
    }

    private static void Hook(Check check)
    {
        // From the guide star to the far edge: a corner-guided diagonal of F·A, one pixel as long as the trail.
        var far =
            check.In("focal_mm") * double.DegreesToRadians(check.In("guide_to_edge_deg")) * 1000.0;
        var pixel = far / Math.Sqrt(2.0) / 1000.0;
        var trail = StarTrail.Of(
            new(
                new Rig(check.In("focal_mm"), new(1000, 1000, pixel)),
                GuideStar.Corner,
                Angle.FromArcminutes(15.0),
                Angle.FromDegrees(check.In("dec")),
                check.In("trail_um") / pixel
            )
        );
        var error = trail.ErrorFor(TimeSpan.FromMinutes(check.In("minutes"))).Arcminutes;
        Relative(check, "error_arcmin_exact_constant", error);
        Relative(check, "error_arcmin_working_formula", error);
    }

    private static void Relative(Check check, string name, double actual)
    {
        var expected = check.Expect.GetProperty(name).GetDouble();
        Assert.Equal(
            expected,
            actual,
            check.Allowed.GetProperty("rel").GetDouble() * Math.Abs(expected)
        );
    }
}
