using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class ShootingRouteTests
{
    [Theory]
    [InlineData(MountDirection.West, new[] { 3, 2, 1, 0 })]
    [InlineData(MountDirection.East, new[] { 0, 1, 2, 3 })]
    public void Of_ARow_RunsTowardsTheFinishSide(MountDirection finish, int[] expected)
    {
        // Listed from west to east.
        var route = Route(
            [
                .. Enumerable
                    .Range(0, 4)
                    .Select(i => SkyDirection.FromDegrees(358.0 + (3.0 * i), 20.0)),
            ],
            Handling(finish, MountDirection.North)
        );

        Assert.Equal(expected, route.Order);
        Assert.Equal(0, route.PastAndBack);

        // 9 degrees at 60 times 15.041 arcsec/s.
        Assert.Equal(9.0 * 3600.0 / (60.0 * 15.041069), route.Moving.TotalSeconds, 0.01);
    }

    [Theory]
    [InlineData(MountDirection.North, new[] { 0, 1, 2 })]
    [InlineData(MountDirection.South, new[] { 2, 1, 0 })]
    public void Of_AColumn_RunsTowardsTheFinishSide(MountDirection finish, int[] expected)
    {
        var route = Route(
            [
                .. Enumerable
                    .Range(0, 3)
                    .Select(i => SkyDirection.FromDegrees(10.0, 20.0 + (2.5 * i))),
            ],
            Handling(MountDirection.West, finish)
        );

        Assert.Equal(expected, route.Order);
        Assert.Equal(0, route.PastAndBack);
    }

    [Fact]
    public void Of_AMoveAgainstTheFinishSide_GoesPastByTwiceTheBacklashAndBack()
    {
        // One panel north-east of the other: either order is against one finish side, once.
        var route = Route(
            [SkyDirection.FromDegrees(10.0, 0.0), SkyDirection.FromDegrees(14.0, 3.0)],
            Handling(MountDirection.West, MountDirection.North, backlashArcminutes: 3.0)
        );

        var rate = 60.0 * 15.041069 / 3600.0;
        Assert.Equal(1, route.PastAndBack);
        Assert.Equal(
            (7.0 / rate) + 20.0 + (4.0 * 3.0 / 60.0 / rate),
            route.Moving.TotalSeconds,
            0.01
        );
    }

    [Fact]
    public void Cheapest_RandomCosts_IsNotBeatenByAnyOrder()
    {
        var random = new Random(6);
        for (var trial = 0; trial < 40; trial++)
        {
            var count = random.Next(1, 7);
            var costs = new double[count, count];
            for (var i = 0; i < count * count; i++)
            {
                costs[i / count, i % count] = random.NextDouble();
            }

            var order = RouteSearch.Cheapest(count, (from, to) => costs[from, to]);

            Assert.Equal(Enumerable.Range(0, count), order.Order());
            var cost = RouteSearch.Cost((from, to) => costs[from, to], order);
            Assert.Equal(
                Orders([.. Enumerable.Range(0, count)])
                    .Min(other => RouteSearch.Cost((from, to) => costs[from, to], other)),
                cost,
                1e-12
            );
        }
    }

    [Theory]
    [InlineData(5, 2, 0.0)]
    [InlineData(3, 3, 50.0)]
    [InlineData(2, 5, 75.0)]
    [InlineData(9, 1, -30.0)]
    public void Good_OfAGrid_IsNearlyTheCheapest(int columns, int rows, double declination)
    {
        var places = Grid(columns, rows, declination);
        var cost = new MoveCost(Handling(MountDirection.West, MountDirection.North, 3.0));
        double Step(int from, int to) => cost.Seconds(places[from], places[to]);
        var best = RouteSearch.Cost(Step, RouteSearch.Cheapest(places.Count, Step));

        var good = RouteSearch.Good(
            places.Count,
            Step,
            [
                [.. Enumerable.Range(0, places.Count)],
            ],
            longestRun: 3
        );

        Assert.Equal(Enumerable.Range(0, places.Count), good.Order());
        Assert.InRange(RouteSearch.Cost(Step, good), best - 1e-9, 1.1 * best);
    }

    [Theory]
    [InlineData(6, 5)]
    [InlineData(20, 15)]
    public void Of_ManyPanels_IsNoWorseThanRowByRow(int columns, int rows)
    {
        var places = Grid(columns, rows, 40.0);
        var cost = new MoveCost(null);

        var route = ShootingRoute.Of(
            places,
            [.. Enumerable.Range(0, places.Count).Select(i => i / columns)],
            [.. Enumerable.Range(0, places.Count).Select(i => i % columns)],
            cost
        );

        Assert.Equal(Enumerable.Range(0, places.Count), route.Order.Order());
        double Step(int from, int to) => cost.Seconds(places[from], places[to]);
        Assert.InRange(
            RouteSearch.Cost(Step, route.Order),
            0.0,
            RouteSearch.Cost(Step, [.. Enumerable.Range(0, places.Count)])
        );
    }

    [Fact]
    public void Frame_OfAMosaic_ListsItsPanelsInTheOrderOfShooting()
    {
        var plan = Requests.Framed(
            Requests.Of(
                Requests.Box(40.0, 10.0, 2.0, 9.0, 0.0),
                grid: Framing.Mosaics.GridWish.Fixed(3, 1)
            )
        );

        Assert.Equal(
            plan.Route!.Order.Select(i => i + 1),
            plan.PanelsToShoot.Select(p => p.Number)
        );
        Assert.Equal(
            plan.Panels.OrderByDescending(panel => panel.OfDate.RightAscension.Degrees),
            plan.PanelsToShoot
        );
    }

    private static ShootingRoute Route(
        IReadOnlyList<SkyDirection> places,
        MountHandling handling
    ) =>
        ShootingRoute.Of(
            places,
            [.. places.Select(_ => 1)],
            [.. Enumerable.Range(1, places.Count)],
            new(handling)
        );

    private static List<SkyDirection> Grid(int columns, int rows, double declination)
    {
        var plane = new TangentPlane(SkyDirection.FromDegrees(100.0, declination));
        return
        [
            .. Enumerable
                .Range(0, columns * rows)
                .Select(i =>
                    plane.Unproject(
                        new(
                            0.065 * (((columns - 1) / 2.0) - (i % columns)),
                            0.044 * (((rows - 1) / 2.0) - (i / columns))
                        )
                    )
                ),
        ];
    }

    private static IEnumerable<int[]> Orders(int[] stops)
    {
        if (stops.Length < 2)
        {
            yield return stops;
            yield break;
        }

        foreach (var first in stops)
        {
            foreach (var rest in Orders([.. stops.Where(stop => stop != first)]))
            {
                yield return [first, .. rest];
            }
        }
    }

    private static MountHandling Handling(
        MountDirection rightAscension,
        MountDirection declination,
        double backlashArcminutes = 0.0
    ) =>
        new()
        {
            RightAscension = new(rightAscension, Angle.FromArcminutes(backlashArcminutes)),
            Declination = new(declination, Angle.FromArcminutes(backlashArcminutes)),
            Speeds = [new("1", 1.0), new("4", 60.0)],
            Keys = new("east", "west", "north", "south"),
            KeyAddsToTracking = true,
        };
}
