using Framing.Mosaics;
using Framing.Planning;
using Framing.Planning.Tests;
using Framing.Sky;

namespace Framing.Export.Tests;

/// <summary>Framings to write.</summary>
internal static class Plans
{
    /// <summary>Two columns, one row, across right ascension 0h.</summary>
    public static FramedPlan Two { get; } =
        Requests.Framed(
            Requests.Of(Requests.Box(0.0, 40.0, 7.0, 1.5, 90.0), grid: GridWish.Fixed(2, 1))
        );

    public static FramedPlan One { get; } =
        Requests.Framed(Requests.Of(Requests.Box(120.0, -20.0, 2.0, 1.0, 90.0)));

    /// <summary>The first panel of the single frame, at another place and angle.</summary>
    public static FramedPlan OneAt(double ra, double dec, double angle) =>
        One with
        {
            Panels =
            [
                One.Panels[0] with
                {
                    Centre = SkyDirection.FromDegrees(ra, dec),
                    PositionAngle = PositionAngle.FromDegrees(angle),
                },
            ],
        };
}
