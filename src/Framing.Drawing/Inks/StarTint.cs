namespace Framing.Drawing;

/// <summary>The faint tint of a star by its colour index.</summary>
/// <remarks>
/// From bluish white at B-V -0.3 over white near +0.3 to pale orange at +1.8: roughly half of the colour that a glowing
/// body of the star's temperature has, which is what the eye makes of bright stars. Sixteen steps, so that stars of one
/// tint can be drawn together.
/// </remarks>
internal static class StarTint
{
    public const int Steps = 16;
    private const double Bluest = -0.3;
    private const double Reddest = 1.8;

    private static readonly (double Index, Colour Colour)[] Knots =
    [
        (-0.3, Colour.Hex(0xC4D6FF)),
        (0.0, Colour.Hex(0xDEE8FF)),
        (0.3, Colour.Hex(0xFBFBFF)),
        (0.65, Colour.Hex(0xFFF6E6)),
        (1.0, Colour.Hex(0xFFE9CB)),
        (1.4, Colour.Hex(0xFFD9AE)),
        (1.8, Colour.Hex(0xFFC793)),
    ];

    /// <summary>The step of a colour index; a star without one is white.</summary>
    public static int StepOf(double? colourIndex)
    {
        var index = Math.Clamp(colourIndex ?? 0.4, Bluest, Reddest);
        return (int)Math.Round((index - Bluest) / (Reddest - Bluest) * (Steps - 1));
    }

    public static Colour Of(int step)
    {
        var index = Bluest + ((Reddest - Bluest) * step / (Steps - 1));
        for (var i = 1; i < Knots.Length; i++)
        {
            if (index <= Knots[i].Index + 1e-9)
            {
                var part = (index - Knots[i - 1].Index) / (Knots[i].Index - Knots[i - 1].Index);
                return Knots[i].Colour.At(part).Over(Knots[i - 1].Colour);
            }
        }

        return Knots[^1].Colour;
    }
}
