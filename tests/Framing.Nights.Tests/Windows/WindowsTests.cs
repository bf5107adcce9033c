using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Windows against the sky of single moments, minute by minute: another way to the same sky.</summary>
public sealed class WindowsTests
{
    private static readonly TimeSpan Edge = TimeSpan.FromSeconds(2.0);

    [Theory]
    [InlineData(37.0, 61.6, 25.0, 0.0)]
    [InlineData(84.0, -5.0, 25.0, 0.0)]
    [InlineData(60.0, 46.0, 20.0, 8.0)]
    [InlineData(300.0, 40.0, 10.0, 0.0)]
    [InlineData(180.0, 30.0, 0.0, 0.0)]
    public void Reachable_SkylineAltitudeZenith_AsTheSkyOfSingleMoments(
        double rightAscension,
        double declination,
        double minAltitude,
        double zenithLimit
    )
    {
        var panel = SkyDirection.FromDegrees(rightAscension, declination);
        var request = Meadow.Request(panel) with
        {
            Limits = new()
            {
                MinAltitude = Angle.FromDegrees(minAltitude),
                ZenithLimit = Angle.FromDegrees(zenithLimit),
            },
        };
        var night = NightsStep.Plan(request).Nights[0];
        var (inside, outside) = (0, 0);
        ForEachMinute(
            night,
            night.Reachable[0],
            (utc, reached) =>
            {
                var place = SiteMoment.Of(request.Site, utc).See(panel);
                var free =
                    place.Altitude.Degrees > minAltitude
                    && place.Altitude > request.Site.Horizon.AltitudeAt(place.Azimuth)
                    && (zenithLimit <= 0.0 || place.Altitude.Degrees < 90.0 - zenithLimit);
                Assert.True(free == reached, $"{utc:o} {place}");
                (inside, outside) = free ? (inside + 1, outside) : (inside, outside + 1);
            }
        );
        Assert.True(inside > 30 && outside + inside > 600);
    }

    [Fact]
    public void Reachable_GermanMount_NothingInThePauseAfterThePassage()
    {
        var panel = SkyDirection.FromDegrees(60.0, 20.0);
        var request = Meadow.Request(panel) with
        {
            Limits = new()
            {
                MinAltitude = Angle.FromDegrees(25.0),
                MeridianPause = TimeSpan.FromMinutes(20.0),
            },
        };
        var windows = NightsStep.Plan(request).Nights[0].Reachable[0];
        Assert.Equal(2, windows.Count);
        Assert.Equal(TimeSpan.FromMinutes(20.0), windows[1].Start - windows[0].End);
        var hourAngle = SiteMoment.Of(request.Site, windows[0].End).See(panel).HourAngle;
        Assert.Equal(0.0, hourAngle.Degrees, 0.001);
    }

    [Theory]
    [InlineData(84.9, 0)]
    [InlineData(85.5, 1)]
    public void Reachable_DeclinationLimit_ByTheDeclinationOfDate(double limit, int windows)
    {
        var panel = SkyDirection.FromDegrees(40.0, 85.0);
        var request = Meadow.Request(panel) with
        {
            Limits = new() { DeclinationLimit = Angle.FromDegrees(limit) },
        };
        Assert.Equal(windows, NightsStep.Plan(request).Nights[0].Reachable[0].Count);
    }

    [Theory]
    [InlineData(180.0, 0.0)]
    [InlineData(60.0, 0.0)]
    [InlineData(60.0, 0.9)]
    public void Plan_MoonRule_NoSubNearTheMoonWhileItIsUp(double away, double litFrom)
    {
        var panel = SkyDirection.FromDegrees(41.0, 45.0);
        var rule = new MoonRule(Angle.FromDegrees(away), litFrom);
        var request = Meadow.Request(panel) with
        {
            Evening = new(2026, 12, 18),
            GoalPerPanel = TimeSpan.FromHours(20.0),
            Filters = [Meadow.Red with { Moon = rule }],
        };
        var free = NightsStep.Plan(request with { Filters = [Meadow.Red] });
        var plan = NightsStep.Plan(request);
        Assert.Equal(litFrom > 0.5, plan.Subs == free.Subs);
        Assert.True(plan.Subs > 0);
        foreach (var block in plan.Blocks.Where(_ => litFrom < 0.5))
        {
            for (var utc = block.From; utc < block.To; utc = utc.AddMinutes(1.0))
            {
                var moment = SiteMoment.Of(request.Site, utc);
                var moon = moment.Moon;
                var down =
                    moon.Place.TrueAltitude + moon.SemiDiameter < Angle.FromArcminutes(-34.0);
                var far =
                    moon.Direction.SeparationTo(moment.Frame.ToOfDate(panel)).Degrees > away - 1e-3;
                Assert.True(down || far, $"{utc:o}");
            }
        }
    }

    private static void ForEachMinute(
        PlannedNight night,
        IReadOnlyList<UtcInterval> windows,
        Action<DateTime, bool> look
    )
    {
        foreach (var usable in night.Usable)
        {
            for (
                var utc = usable.Start.AddSeconds(1.0);
                utc < usable.End;
                utc = utc.AddMinutes(1.0)
            )
            {
                if (
                    windows.Any(window =>
                        (utc - window.Start).Duration() < Edge
                        || (utc - window.End).Duration() < Edge
                    )
                )
                {
                    continue;
                }

                look(utc, windows.Any(window => window.Start <= utc && utc <= window.End));
            }
        }
    }
}
