using Framing.Sky;

namespace Framing.Imaging;

/// <summary>From the pixels of a chart to those of a picture.</summary>
internal abstract class PixelMap
{
    /// <summary>The map for two solutions: exact where both are tangent planes.</summary>
    public static PixelMap Between(WorldCoordinates chart, WorldCoordinates picture) =>
        chart is TanWorldCoordinates plane && picture is TanWorldCoordinates tangent
            ? new PlaneMap(plane, tangent)
            : new PointMap(chart, picture);

    /// <summary>Where the pixels of one row of the chart lie in the picture.</summary>
    /// <param name="row">The row, from 0 at y = 1.</param>
    /// <param name="x">Receives the picture's x for each column, as FITS counts; NaN where the picture does not show it.</param>
    /// <param name="y">Receives the picture's y.</param>
    public abstract void MapRow(int row, Span<double> x, Span<double> y);
}
