using Framing.Sky;

namespace Framing.Planning;

/// <summary>Names a position angle by its compass direction on the sky.</summary>
internal static class SkyWind
{
    private static readonly string[] Names =
    [
        "north",
        "north-east",
        "east",
        "south-east",
        "south",
        "south-west",
        "west",
        "north-west",
    ];

    /// <summary>One of eight names.</summary>
    public static string Of(PositionAngle direction) =>
        Names[(int)Math.Round(direction.Degrees / 45.0, MidpointRounding.AwayFromZero) % 8];
}
