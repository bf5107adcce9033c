using Framing.Nights;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>Forty panels over five nights in a row of cases: the gap to the bound, and how long the whole plan takes.</summary>
internal static class NightsTopic
{
    private const int Runs = 5;

    public static int Run(string[] arguments)
    {
        foreach (var (name, request) in Cases())
        {
            if (arguments.Length > 0 && !arguments.Contains(name))
            {
                continue;
            }

            var (_, plan) = Stopwatches.Time(name, Runs, () => NightsStep.Plan(request));
            var busy = Environment.CpuUsage.TotalTime;
            NightsStep.Plan(request);
            busy = Environment.CpuUsage.TotalTime - busy;
            Console.WriteLine(
                FormattableString.Invariant(
                    $"  {busy.TotalMilliseconds:0} ms of processor time on all cores together"
                )
            );
            Console.WriteLine(
                FormattableString.Invariant(
                    $"  least fraction {plan.LeastFraction:0.0000} of at most {plan.LeastFractionBound:0.0000}, subs {plan.Subs} of at most {plan.SubsBound} (wanted {plan.Tallies.Sum(t => t.SubsWanted)}), gap {100.0 * plan.Gap:0.00} %, changes {plan.Nights.Sum(n => n.Changes)}"
                )
            );
        }

        return 0;
    }

    private static IEnumerable<(string Name, NightsRequest Request)> Cases()
    {
        var one = new NightFilter(
            "H-alpha",
            TimeSpan.FromSeconds(180.0),
            TimeSpan.FromSeconds(4.0),
            3,
            TimeSpan.FromSeconds(25.0),
            1.0,
            default
        );
        var two = one with { Name = "O III", Share = 0.5, Sub = TimeSpan.FromSeconds(300.0) };
        var moonless = two with { Moon = new(Angle.FromDegrees(60.0), 0.2) };
        var wide = Request(41.0, 61.0, 46.2, new(2026, 12, 5)) with { Filters = [one] };
        yield return ("ample", wide with { GoalPerPanel = TimeSpan.FromHours(0.75) });
        yield return ("tight", wide with { GoalPerPanel = TimeSpan.FromHours(1.0) });
        yield return ("short", wide with { GoalPerPanel = TimeSpan.FromHours(2.0) });
        yield return ("filters", wide with { Filters = [one, two] });
        yield return ("moon", wide with { Filters = [one, moonless], Evening = new(2026, 12, 18) });
        yield return ("low", Request(84.0, -5.0, 46.2, new(2026, 12, 5)) with { Filters = [one] });
        yield return (
            "german",
            Request(84.0, 20.0, 46.2, new(2026, 12, 5)) with
            {
                Filters = [one, two],
                Limits = new()
                {
                    MinAltitude = Angle.FromDegrees(30.0),
                    MeridianPause = TimeSpan.FromMinutes(20.0),
                },
            }
        );
        yield return (
            "summer",
            Request(300.0, 40.0, 46.2, new(2026, 7, 10)) with
            {
                Filters = [one],
                GoalPerPanel = TimeSpan.FromHours(0.5),
            }
        );
        yield return (
            "spread",
            Request(84.0, 0.0, 46.2, new(2026, 12, 5)) with
            {
                Filters = [one],
                Panels =
                [
                    .. Enumerable
                        .Range(0, 40)
                        .Select(i => SkyDirection.FromDegrees(9.0 * i, -10.0 + (15.0 * (i % 5)))),
                ],
            }
        );
    }

    private static NightsRequest Request(
        double rightAscension,
        double declination,
        double latitude,
        DateOnly evening
    ) =>
        new()
        {
            Site = new(
                Angle.FromDegrees(latitude),
                Angle.FromDegrees(8.1),
                1650.0,
                new(830.0, -4.0)
            )
            {
                Horizon = new(
                    [
                        new(Angle.FromDegrees(0.0), Angle.FromDegrees(12.0)),
                        new(Angle.FromDegrees(70.0), Angle.FromDegrees(28.0)),
                        new(Angle.FromDegrees(120.0), Angle.FromDegrees(9.0)),
                        new(Angle.FromDegrees(200.0), Angle.FromDegrees(15.0)),
                        new(Angle.FromDegrees(280.0), Angle.FromDegrees(30.0)),
                        new(Angle.FromDegrees(300.0), Angle.FromDegrees(22.0)),
                    ],
                    Angle.Zero
                ),
            },
            Evening = evening,
            Nights = 5,
            Limits = new() { MinAltitude = Angle.FromDegrees(25.0) },
            Setup = TimeSpan.FromMinutes(60.0),
            Repoint = TimeSpan.FromMinutes(10.0),
            FocusEvery = TimeSpan.FromMinutes(60.0),
            Focus = TimeSpan.FromMinutes(3.0),
            Flats = TimeSpan.FromMinutes(15.0),
            GoalPerPanel = TimeSpan.FromHours(1.0),
            ExpectedLoss = 0.2,
            Filters = [],
            Panels =
            [
                .. Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        SkyDirection.FromDegrees(
                            (
                                rightAscension
                                + (3.8 * ((i % 8) - 3.5) / Math.Cos(declination * Math.PI / 180.0))
                                + 360.0
                            ) % 360.0,
                            declination + (2.55 * ((i / 8) - 2))
                        )
                    ),
            ],
        };
}
