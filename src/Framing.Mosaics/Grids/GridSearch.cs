using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Finds the grid with the fewest panels.</summary>
internal sealed class GridSearch(
    SphereFit fit,
    FieldShape field,
    PanelOverlap overlap,
    double wantedMargin,
    int mostPanels,
    PositionAngle? present
)
{
    private readonly double grace =
        0.4
        * GridSteps.Grace
        * Math.Min(
            field.TangentWidth - overlap.AlongWidth,
            field.TangentHeight - overlap.AlongHeight
        );

    public GridFit Fit(int columns, int rows) =>
        new(
            columns,
            rows,
            OutlineFit.LargestMargin(
                fit,
                GridSteps.WholeFrame(field, overlap, columns, rows),
                present
            ),
            wantedMargin,
            mostPanels
        );

    public GridFit Fewest(int longestWalk)
    {
        // The grid that lies along the outline always holds it; no side of any useful grid is longer than its longer one.
        var strip = fit.Best(FitGoal.Narrowest(), PositionAngle.North);
        var best = Shorter(
            Fit(Columns(strip.NeededWidth), Rows(strip.NeededHeight)),
            Fit(Columns(strip.NeededHeight), Rows(strip.NeededWidth))
        );

        // In the planes of other frames the outline can be a little larger, by up to the square of its size.
        var diagonal =
            double.Hypot(strip.NeededWidth, strip.NeededHeight)
            * (1.0 + (strip.NeededWidth * strip.NeededWidth));
        var (mostColumns, mostRows) = (Columns(diagonal), Rows(diagonal));
        if (mostColumns + mostRows > longestWalk)
        {
            return best;
        }

        var (columns, rows) = (1, mostRows);
        while (columns <= mostColumns && rows >= 1)
        {
            if ((long)columns * rows > best.Panels)
            {
                // Not among the fewest, fit or not: where it fits, a smaller row count of this column may still count.
                rows = (int)(best.Panels / columns);
                continue;
            }

            if (!CanHold(strip, columns, rows))
            {
                columns++;
                continue;
            }

            var tried = Fit(columns, rows);
            if (!Holds(tried))
            {
                columns++;
                continue;
            }

            best = Shorter(best, tried);
            rows--;
        }

        return best;
    }

    private bool Holds(GridFit tried) => tried.Frame.TangentMargin >= wantedMargin - grace;

    /// <summary>A quick look: no frame narrower than the narrowest strip can hold the outline.</summary>
    private bool CanHold(SphereFrame strip, int columns, int rows)
    {
        var whole = GridSteps.WholeFrame(field, overlap, columns, rows);
        var room = Math.Min(whole.TangentWidth, whole.TangentHeight) - (2.0 * wantedMargin);

        return room >= (strip.NeededHeight * (1.0 - GridSteps.Grace)) - (2.0 * grace);
    }

    private GridFit Shorter(GridFit best, GridFit tried)
    {
        if (Holds(best) != Holds(tried))
        {
            return Holds(best) ? best : tried;
        }

        if (best.Panels != tried.Panels)
        {
            return best.Panels < tried.Panels ? best : tried;
        }

        var tie = 1e-12 * (best.Frame.Field.TangentWidth + best.Frame.Field.TangentHeight);
        var gain = tried.Frame.TangentMargin - best.Frame.TangentMargin;
        if (Math.Abs(gain) > tie)
        {
            return gain > 0.0 ? tried : best;
        }

        var (turnOfBest, turnOfTried) = (Turn(best), Turn(tried));
        return PlanarFit.Closer(turnOfTried, turnOfBest) ? tried : best;
    }

    private double Turn(GridFit grid) =>
        (present ?? PositionAngle.North).FrameTurnTo(grid.Frame.Pose.PositionAngle).Radians;

    private int Columns(double extent) =>
        GridSteps.PanelsNeeded(extent, field.TangentWidth, overlap.AlongWidth, wantedMargin);

    private int Rows(double extent) =>
        GridSteps.PanelsNeeded(extent, field.TangentHeight, overlap.AlongHeight, wantedMargin);
}
