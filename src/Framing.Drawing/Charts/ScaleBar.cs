using System.Globalization;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A bar that spans a round angle on the sky at the middle of the chart.</summary>
/// <param name="Span">The angle.</param>
/// <param name="Length">The length of the bar in pixels: what a line of that angle through the middle of the chart spans.</param>
/// <param name="Label">The angle in words.</param>
internal sealed record ScaleBar(Angle Span, double Length, string Label)
{
    private static readonly int[] RoundArcseconds =
    [
        1,
        2,
        5,
        10,
        20,
        30,
        60,
        120,
        300,
        600,
        1200,
        1800,
        3600,
        7200,
        18000,
        36000,
        72000,
    ];

    /// <summary>The longest round bar that is not longer than a part of the chart.</summary>
    public static ScaleBar For(ChartGeometry chart, double mostPixels)
    {
        var best = RoundArcseconds[0];
        foreach (var arcseconds in RoundArcseconds)
        {
            if (LengthOf(chart, arcseconds) <= mostPixels)
            {
                best = arcseconds;
            }
        }

        var label = best switch
        {
            >= 3600 => string.Create(CultureInfo.InvariantCulture, $"{best / 3600}°"),
            >= 60 => string.Create(CultureInfo.InvariantCulture, $"{best / 60}′"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{best}″"),
        };
        return new(Angle.FromArcseconds(best), LengthOf(chart, best), label);
    }

    private static double LengthOf(ChartGeometry chart, int arcseconds) =>
        2.0 * Math.Tan(Angle.FromArcseconds(arcseconds).Radians / 2.0) / chart.Scale.Radians;
}
