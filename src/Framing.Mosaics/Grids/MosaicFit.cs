using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Lays a grid of panels over an outline.</summary>
/// <remarks>
/// <para>
/// The overlap stays as asked; the mosaic is one large frame, w + (columns - 1)(w - overlap) wide, and is fitted as one
/// (<see cref="OutlineFit"/>): the same exact answer for one panel and for many.
/// </para>
/// <para>
/// When the number of panels is free, the answer has the fewest panels that any rectangular grid needs at any angle, and
/// of all grids with that number the one that leaves the largest margin. A grid with more columns or rows holds whatever a
/// smaller one holds, so walking down the staircase between "fits" and "does not fit" meets every candidate.
/// </para>
/// <para>
/// An adapted grid (<see cref="GridWish.Adapted"/>) starts from that answer and has never more panels; where it has fewer,
/// they stand in bands that follow the outline.
/// </para>
/// </remarks>
public static class MosaicFit
{
    /// <summary>The longest staircase that is walked: beyond it the grid along the outline is answered.</summary>
    private const int LongestWalk = 2000;

    /// <summary>The grid, place and angle that leave the largest margin.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="field">One panel, both sides more than 0.</param>
    /// <param name="overlap">What neighbours share, at least 0 and less than the panel.</param>
    /// <param name="grid">A fixed grid, or as few panels as hold the outline with the wanted margin.</param>
    /// <param name="wantedMargin">The margin wanted on all sides, a tangent.</param>
    /// <param name="mostPanels">The most panels allowed, 1 or more.</param>
    /// <param name="present">Position angle of the camera now, if known.</param>
    /// <returns>
    /// The grid. When it needs more panels than are allowed it says so and says how many: exactly the fewest, or for
    /// outlines beyond 2000 columns and rows the number of the grid that lies along the outline.
    /// </returns>
    /// <exception cref="ArgumentException">A length or number is out of its range.</exception>
    public static GridFit LargestMargin(
        SkyOutline outline,
        FieldShape field,
        PanelOverlap overlap,
        GridWish grid,
        double wantedMargin,
        int mostPanels,
        PositionAngle? present = null
    )
    {
        Check(outline, field, overlap, wantedMargin, mostPanels);
        var fit = new SphereFit(outline);
        var search = new GridSearch(fit, field, overlap, wantedMargin, mostPanels, present);
        if (grid.IsAdapted)
        {
            var full = search.Fewest(LongestWalk);
            var angle = AdaptedFit.BestAngle(outline, field, overlap, full, present);
            var found = AtAngle(outline, field, overlap, grid, wantedMargin, mostPanels, angle);
            return found.Panels < full.Panels ? found : full;
        }

        return grid.IsFewest ? search.Fewest(LongestWalk) : search.Fit(grid.Columns, grid.Rows);
    }

    /// <summary>The grid and place at a given angle.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="field">One panel, both sides more than 0.</param>
    /// <param name="overlap">What neighbours share, at least 0 and less than the panel.</param>
    /// <param name="grid">A fixed grid, or as few panels as hold the outline with the wanted margin at this angle.</param>
    /// <param name="wantedMargin">The margin wanted on all sides, a tangent.</param>
    /// <param name="mostPanels">The most panels allowed, 1 or more.</param>
    /// <param name="angle">Position angle of the picture's up direction at the centre of the mosaic.</param>
    /// <returns>The grid, at just this angle; when it needs more panels than are allowed it says so and says how many.</returns>
    /// <exception cref="ArgumentException">A length or number is out of its range.</exception>
    public static GridFit AtAngle(
        SkyOutline outline,
        FieldShape field,
        PanelOverlap overlap,
        GridWish grid,
        double wantedMargin,
        int mostPanels,
        PositionAngle angle
    )
    {
        Check(outline, field, overlap, wantedMargin, mostPanels);
        return OutlineFit
            .AllAtAngle(outline, field, angle)
            .Select(frame => Around(frame, field, overlap, grid, wantedMargin, mostPanels))
            .Select(fit => grid.IsAdapted ? AdaptedFit.About(outline, field, overlap, fit) : fit)
            .OrderBy(fit => fit.Panels)
            .ThenByDescending(fit => fit.TangentMargin)
            .First();
    }

    /// <summary>The grid whose middle and angle are given.</summary>
    /// <param name="outline">What is to be held.</param>
    /// <param name="field">One panel.</param>
    /// <param name="overlap">What neighbours share.</param>
    /// <param name="grid">A fixed grid, or as few panels as hold the outline from this middle, in a full rectangle.</param>
    /// <param name="wantedMargin">The margin wanted on all sides, a tangent.</param>
    /// <param name="mostPanels">The most panels there may be.</param>
    /// <param name="pose">The middle of the grid and the camera angle there.</param>
    /// <returns>The grid, with what it leaves on the sides.</returns>
    public static GridFit At(
        SkyOutline outline,
        FieldShape field,
        PanelOverlap overlap,
        GridWish grid,
        double wantedMargin,
        int mostPanels,
        CameraPose pose
    )
    {
        Check(outline, field, overlap, wantedMargin, mostPanels);
        var plane = new TangentPlane(pose.Centre);
        var (sin, cos) = Math.SinCos(pose.PositionAngle.Radians);
        var (right, up) = (0.0, 0.0);
        foreach (var corner in outline.Corners)
        {
            // A corner behind the plane is farther out than any frame reaches.
            var point = plane.TryProject(corner, out var seen) ? seen : new PlanePoint(1e3, 1e3);
            right = Math.Max(right, Math.Abs((point.Eta * sin) - (point.Xi * cos)));
            up = Math.Max(up, Math.Abs((point.Xi * sin) + (point.Eta * cos)));
        }

        return Around(
            new(pose, field, 2.0 * right, 2.0 * up),
            field,
            overlap,
            grid,
            wantedMargin,
            mostPanels
        );
    }

    private static GridFit Around(
        FittedFrame frame,
        FieldShape field,
        PanelOverlap overlap,
        GridWish grid,
        double wantedMargin,
        int mostPanels
    )
    {
        var (columns, rows) = grid.IsFewest
            ? (
                GridSteps.PanelsNeeded(
                    frame.NeededWidth,
                    field.TangentWidth,
                    overlap.AlongWidth,
                    wantedMargin
                ),
                GridSteps.PanelsNeeded(
                    frame.NeededHeight,
                    field.TangentHeight,
                    overlap.AlongHeight,
                    wantedMargin
                )
            )
            : (grid.Columns, grid.Rows);
        return new(
            columns,
            rows,
            frame with
            {
                Field = GridSteps.WholeFrame(field, overlap, columns, rows),
            },
            wantedMargin,
            mostPanels
        );
    }

    private static void Check(
        SkyOutline outline,
        FieldShape field,
        PanelOverlap overlap,
        double wantedMargin,
        int mostPanels
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        PlanarFit.CheckSides(field.TangentWidth, field.TangentHeight);
        GridSteps.Check(field, overlap);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostPanels, 1);
        if (!double.IsFinite(wantedMargin))
        {
            throw new ArgumentOutOfRangeException(
                nameof(wantedMargin),
                wantedMargin,
                "A margin is a finite tangent."
            );
        }
    }
}
