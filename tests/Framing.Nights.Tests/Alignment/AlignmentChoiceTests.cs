using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class AlignmentChoiceTests
{
    private static readonly AlignmentLimits Limits = new();

    [Fact]
    public void Of_ManyStars_ChoosesWellPlacedOnesFarApart()
    {
        var random = new Random(77);
        var three = 0;
        for (var round = 0; round < 40; round++)
        {
            var (moment, stars) = Sky(random, 60);
            var chosen = AlignmentChoice.Of(moment, stars, Limits);
            foreach (var star in chosen)
            {
                var icrs = star.Star.Icrs;
                var place = moment.See(icrs);
                Assert.Equal(place, star.Place);
                Assert.InRange(place.Altitude.Degrees, 25.0, 70.0);
                Assert.True(
                    place.Altitude - moment.Site.Horizon.AltitudeAt(place.Azimuth)
                        >= Limits.OverSkyline
                );
                Assert.InRange(Math.Abs(star.OfDate.Declination.Degrees), 0.0, 70.0);
                Assert.InRange(star.Star.Magnitude, -2.0, 2.6);
                Assert.Equal(
                    0.0,
                    moment.Frame.ToOfDate(icrs).SeparationTo(star.OfDate).Arcseconds,
                    1e-6
                );
            }

            if (chosen.Count < 3)
            {
                continue;
            }

            three++;
            Assert.True(chosen[0].Star.Magnitude <= chosen[1].Star.Magnitude);
            Assert.True(chosen[1].Star.Magnitude <= chosen[2].Star.Magnitude);

            // No other star in place of one of them would spread them wider at the same brightness.
            var spread = Spread(chosen);
            foreach (var other in stars.Where(star => star.Magnitude <= chosen[0].Star.Magnitude))
            {
                var alone = AlignmentChoice.Of(moment, [other], Limits);
                if (alone.Count == 1)
                {
                    for (var i = 0; i < 3; i++)
                    {
                        var swapped = chosen.ToArray();
                        swapped[i] = alone[0];
                        Assert.True(
                            swapped.Distinct().Count() < 3
                                || Math.Min(80.0, Spread(swapped)) <= Math.Min(80.0, spread) + 1e-9
                        );
                    }
                }
            }
        }

        Assert.InRange(three, 20, 40);
    }

    [Fact]
    public void Of_StarsThatStandBadly_IsEmpty()
    {
        var (moment, _) = Sky(new(5), 0);
        var zenith = moment.Frame.ToIcrs(
            SkyDirection.FromDegrees(moment.LocalSiderealTime.Degrees, moment.Site.Latitude.Degrees)
        );
        BrightStar[] stars =
        [
            new("overhead", zenith, 0.0),
            new("below", SkyDirection.FromVector(-zenith.Vector), 0.0),
        ];
        Assert.Empty(AlignmentChoice.Of(moment, stars, Limits));
    }

    private static double Spread(IReadOnlyList<AlignmentStar> stars) =>
        Math.Min(
            stars[0].OfDate.SeparationTo(stars[1].OfDate).Degrees,
            Math.Min(
                stars[1].OfDate.SeparationTo(stars[2].OfDate).Degrees,
                stars[0].OfDate.SeparationTo(stars[2].OfDate).Degrees
            )
        );

    private static (SiteMoment Moment, List<BrightStar> Stars) Sky(Random random, int count)
    {
        var site = new ObservingSite(
            Angle.FromDegrees((random.NextDouble() * 120.0) - 60.0),
            Angle.FromDegrees((random.NextDouble() * 360.0) - 180.0),
            500.0,
            AirConditions.Usual
        )
        {
            Horizon = new(
                [
                    new(Angle.FromDegrees(90.0), Angle.FromDegrees(35.0)),
                    new(Angle.FromDegrees(180.0), Angle.FromDegrees(5.0)),
                    new(Angle.FromDegrees(300.0), Angle.FromDegrees(10.0)),
                ],
                Angle.Zero
            ),
        };
        var utc = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddDays(
            random.NextDouble() * 9000.0
        );
        var stars = Enumerable
            .Range(0, count)
            .Select(i =>
            {
                var sin = (2.0 * random.NextDouble()) - 1.0;
                return new BrightStar(
                    FormattableString.Invariant($"star {i}"),
                    SkyDirection.FromDegrees(
                        random.NextDouble() * 360.0,
                        double.RadiansToDegrees(Math.Asin(sin))
                    ),
                    (random.NextDouble() * 5.0) - 1.5
                );
            })
            .ToList();
        return (SiteMoment.Of(site, utc), stars);
    }
}
