using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Drawing.Tests;

/// <summary>Scenes of an invented sky: stars strewn by a seeded generator, ellipses, and panels of a rig.</summary>
internal static class InventedSky
{
    public static SkyDirection At(double ra, double dec) => SkyDirection.FromDegrees(ra, dec);

    public static SkyScene Scene(
        double ra,
        double dec,
        double width = 12.0,
        double height = 8.0,
        int stars = 600,
        bool panels = true,
        double up = 0.0,
        bool mirrored = false
    )
    {
        var centre = At(ra, dec);
        return new SkyScene
        {
            View = new(
                centre,
                Angle.FromDegrees(width),
                Angle.FromDegrees(height),
                PositionAngle.FromDegrees(up),
                mirrored
            ),
            Title = "An invented field",
            Summary = "2 panels of 4.4° × 3.0°, overlap 31′",
            Stars = Strewn(centre, width, stars),
            Objects = Ellipses(centre, width),
            Targets =
            [
                new(
                    "The ember",
                    ChartObjectKind.Nebula,
                    SkyOutline.Ellipse(
                        centre,
                        Angle.FromDegrees(width * 0.3),
                        Angle.FromDegrees(width * 0.12),
                        PositionAngle.FromDegrees(70.0)
                    )
                ),
            ],
            Panels = panels ? TwoPanels(centre, width) : [],
            FallsShort = panels
                ?
                [
                    [
                        centre.Offset(
                            PositionAngle.FromDegrees(60.0),
                            Angle.FromDegrees(width * 0.12)
                        ),
                        centre.Offset(
                            PositionAngle.FromDegrees(80.0),
                            Angle.FromDegrees(width * 0.16)
                        ),
                        centre.Offset(
                            PositionAngle.FromDegrees(95.0),
                            Angle.FromDegrees(width * 0.12)
                        ),
                    ],
                ]
                : [],
        };
    }

    public static List<ChartStar> Strewn(SkyDirection centre, double width, int count)
    {
        var random = new Random(20261205);
        var stars = new List<ChartStar>();
        for (var i = 0; i < count; i++)
        {
            var direction = centre.Offset(
                PositionAngle.FromDegrees(random.NextDouble() * 360.0),
                Angle.FromDegrees(Math.Sqrt(random.NextDouble()) * width * 0.75)
            );
            var magnitude = 11.0 + (Math.Log10(random.NextDouble() + 1e-4) * 2.0);
            stars.Add(
                new(
                    direction,
                    magnitude,
                    (random.NextDouble() * 2.0) - 0.3,
                    magnitude < 8.5 ? FormattableString.Invariant($"{i} Inv") : null
                )
            );
        }

        return stars;
    }

    private static List<ChartObject> Ellipses(SkyDirection centre, double width)
    {
        var random = new Random(7);
        var kinds = Enum.GetValues<ChartObjectKind>();
        return
        [
            .. Enumerable
                .Range(1, 40)
                .Select(i => new ChartObject(
                    FormattableString.Invariant($"Cloud {i}"),
                    kinds[i % kinds.Length],
                    SkyOutline.Ellipse(
                        centre.Offset(
                            PositionAngle.FromDegrees(random.NextDouble() * 360.0),
                            Angle.FromDegrees(random.NextDouble() * width * 0.6)
                        ),
                        Angle.FromDegrees(width * (0.02 + (0.1 * random.NextDouble()))),
                        Angle.FromDegrees(width * 0.02),
                        PositionAngle.FromDegrees(random.NextDouble() * 360.0)
                    )
                )),
        ];
    }

    private static List<ChartPanel> TwoPanels(SkyDirection centre, double width)
    {
        var field = new FieldShape(
            2.0 * Math.Tan(width * 0.15 * Math.PI / 180.0),
            2.0 * Math.Tan(width * 0.1 * Math.PI / 180.0)
        );
        var angle = PositionAngle.FromDegrees(21.2);
        return
        [
            .. Enumerable
                .Range(0, 2)
                .Select(i =>
                {
                    var middle = centre.Offset(
                        angle.TurnedBy(Angle.FromDegrees(90.0)),
                        Angle.FromDegrees(width * (i == 0 ? -0.13 : 0.13))
                    );
                    return new ChartPanel(
                        i + 1,
                        middle,
                        field.Corners(new(middle, angle), mirrored: false)
                    );
                }),
        ];
    }
}
