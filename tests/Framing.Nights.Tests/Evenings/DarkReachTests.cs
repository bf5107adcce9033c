using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class DarkReachTests
{
    [Fact]
    public void Of_AnyDirection_IsWhatIsClearWhileItIsDark()
    {
        var random = new Random(606);
        var (looked, clear) = (0, 0);
        for (var round = 0; round < 60; round++)
        {
            var site = new ObservingSite(
                Angle.FromDegrees((random.NextDouble() * 120.0) - 60.0),
                Angle.FromDegrees((random.NextDouble() * 360.0) - 180.0),
                random.NextDouble() * 3000.0,
                AirConditions.Usual
            )
            {
                Horizon = new(
                    Enumerable
                        .Range(0, 12)
                        .Select(i => new HorizonPoint(
                            Angle.FromDegrees(30.0 * i),
                            Angle.FromDegrees(random.NextDouble() * 25.0)
                        )),
                    Angle.Zero
                ),
            };
            var night = NightOfSun.Of(site, new DateOnly(2026, 1, 1).AddDays(random.Next(0, 8000)));
            var dark = DarkTime.Of(night, Angle.FromDegrees(-18.0));
            if (dark.Stretches.Count == 0)
            {
                continue;
            }

            looked++;
            var icrs = SkyDirection.FromDegrees(
                random.NextDouble() * 360.0,
                (random.NextDouble() * 170.0) - 85.0
            );
            var least = Angle.FromDegrees(15.0);
            var hours = new SiteHours(site, night.Start, night.End);
            var path = hours.Follow(icrs);
            var reach = DarkReach.Of(path, dark.Stretches, least);

            // The other way: clear of the skyline at one-minute steps with halved edges, cut with the dark.
            var expected = RiseAndSet
                .StarClear(icrs, site, least, night.Start, night.End)
                .SelectMany(stretch =>
                    dark.Stretches.Select(other =>
                        (
                            Start: stretch.Start > other.Start ? stretch.Start : other.Start,
                            End: stretch.End < other.End ? stretch.End : other.End
                        )
                    )
                )
                .Where(stretch => stretch.Start < stretch.End)
                .ToList();
            var sum = expected.Sum(stretch => (stretch.End - stretch.Start).TotalMinutes);
            Assert.Equal(sum, reach.Length.TotalMinutes, 2.5);
            if (sum < 5.0)
            {
                continue;
            }

            clear++;
            Assert.Equal(reach.Highest, path.At(reach.Best));
            var least60 = Angle.FromDegrees(91.0);
            foreach (var (start, end) in expected)
            {
                for (var time = start; time <= end; time = time.AddMinutes(1.0))
                {
                    var altitude = path.At(time).Altitude;
                    Assert.True(altitude.Degrees <= reach.Highest.Altitude.Degrees + 0.01);
                    least60 = Angle.Min(least60, altitude);
                }
            }

            Assert.Equal(least60.Degrees, reach.Lowest!.Value.Degrees, 0.6);
        }

        Assert.InRange(looked, 45, 60);
        Assert.InRange(clear, 20, looked);
    }

    [Fact]
    public void Of_NoDarkTime_IsRefused()
    {
        var site = new ObservingSite(Angle.Zero, Angle.Zero, 0.0, AirConditions.Usual);
        var start = TestTable.Time("2026-01-01T00:00:00Z");
        var path = new SiteHours(site, start, start.AddDays(1.0)).Follow(
            SkyDirection.FromDegrees(0.0, 0.0)
        );
        Assert.Throws<ArgumentException>(() => DarkReach.Of(path, [], Angle.Zero));
    }
}
