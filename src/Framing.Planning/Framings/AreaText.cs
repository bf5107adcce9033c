using Framing.Sky;

namespace Framing.Planning;

/// <summary>Says an area in the unit that suits it.</summary>
internal static class AreaText
{
    public static string Of(SolidAngle area) =>
        area.SquareDegrees >= 0.1
            ? FormattableString.Invariant($"{area.SquareDegrees:0.0} square degrees")
            : FormattableString.Invariant($"{area.SquareArcminutes:0.##} square minutes of arc");
}
