using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>An invented mountain meadow with a skyline, and requests for it.</summary>
internal static class Meadow
{
    public static ObservingSite Site { get; } =
        At(46.2) with
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
        };

    public static NightFilter Red { get; } =
        new(
            "H-alpha",
            TimeSpan.FromSeconds(180.0),
            TimeSpan.FromSeconds(4.0),
            3,
            TimeSpan.FromSeconds(25.0),
            1.0,
            default
        );

    public static NightFilter Teal { get; } =
        Red with
        {
            Name = "O III",
            Sub = TimeSpan.FromSeconds(300.0),
            Share = 0.5,
        };

    public static ObservingSite At(double latitude) =>
        new(Angle.FromDegrees(latitude), Angle.FromDegrees(8.1), 1650.0, new(830.0, -4.0));

    public static NightsRequest Request(params SkyDirection[] panels) =>
        new()
        {
            Site = Site,
            Evening = new(2026, 12, 5),
            Limits = new() { MinAltitude = Angle.FromDegrees(25.0) },
            Setup = TimeSpan.FromMinutes(60.0),
            Repoint = TimeSpan.FromMinutes(10.0),
            FocusEvery = TimeSpan.FromMinutes(60.0),
            Focus = TimeSpan.FromMinutes(3.0),
            Flats = TimeSpan.FromMinutes(15.0),
            GoalPerPanel = TimeSpan.FromHours(2.0),
            ExpectedLoss = 0.2,
            Filters = [Red],
            Panels = panels,
        };

    /// <summary>Panels side by side about a place, eight in a row.</summary>
    public static SkyDirection[] Grid(double rightAscension, double declination, int count) =>
        [
            .. Enumerable
                .Range(0, count)
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
        ];
}
