using Framing.Sky;

namespace Framing.Drawing;

/// <summary>North and east at a place of the chart: true for that very place, also near a pole and in a turned chart.</summary>
/// <param name="Place">Where both arrows start.</param>
/// <param name="North">A step of one pixel towards north.</param>
/// <param name="East">A step of one pixel towards east.</param>
internal sealed record DirectionMark(PicturePoint Place, PicturePoint North, PicturePoint East)
{
    /// <summary>The mark at a place.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="place">A place in it.</param>
    public static DirectionMark At(ChartGeometry chart, PicturePoint place)
    {
        var here = chart.PictureToSky(place);
        return new(
            place,
            Step(chart, here, PositionAngle.North),
            Step(chart, here, PositionAngle.East)
        );
    }

    private static PicturePoint Step(
        ChartGeometry chart,
        SkyDirection here,
        PositionAngle direction
    )
    {
        // A hundredth of a pixel to either side: the curvature of the grid does not matter.
        var small = chart.Scale * 0.01;
        chart.TrySkyToPicture(here.Offset(direction, small), out var ahead);
        chart.TrySkyToPicture(here.Offset(direction.Opposite, small), out var behind);
        var step = ahead - behind;
        return step * (1.0 / step.Length);
    }
}
