using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>From a full rectangle of panels to fewer that follow the outline.</summary>
internal static class AdaptedFit
{
    /// <summary>Angles at which bands are tried before the best one is looked at closely.</summary>
    private const int Angles = 36;

    /// <summary>The steps, in degrees, by which the best angle is improved.</summary>
    private static readonly double[] Closer = [2.5, 1.25, 0.6];

    /// <summary>The fewest panels found about the middle of a full rectangle at its angle.</summary>
    public static GridFit About(
        SkyOutline outline,
        FieldShape field,
        PanelOverlap overlap,
        GridFit full
    ) =>
        IsWorthIt(outline, full)
            ? Chosen(
                full,
                full.Frame.Pose,
                new AdaptedSearch(outline, field, overlap, full.WantedMargin).At(full.Frame.Pose)
            )
            : full;

    /// <summary>The angle at which the fewest panels were found about the middle of a full rectangle.</summary>
    /// <param name="outline">What to hold.</param>
    /// <param name="field">One panel.</param>
    /// <param name="overlap">What neighbours share.</param>
    /// <param name="full">The full rectangle with the fewest panels.</param>
    /// <param name="present">Position angle of the camera now, if known.</param>
    public static PositionAngle BestAngle(
        SkyOutline outline,
        FieldShape field,
        PanelOverlap overlap,
        GridFit full,
        PositionAngle? present
    )
    {
        var (centre, start) = (full.Frame.Pose.Centre, full.Frame.Pose.PositionAngle);
        if (!IsWorthIt(outline, full))
        {
            return start;
        }

        var search = new AdaptedSearch(outline, field, overlap, full.WantedMargin);
        var angle = start;
        var best = search.At(full.Frame.Pose);
        for (var i = 1; i < Angles; i++)
        {
            Try(start.TurnedBy(Angle.FromDegrees(i * 180.0 / Angles)));
        }

        foreach (var degrees in Closer)
        {
            var middle = angle;
            Try(middle.TurnedBy(Angle.FromDegrees(degrees)));
            Try(middle.TurnedBy(Angle.FromDegrees(-degrees)));
        }

        return best?.Places.Count < full.Panels ? OutlineFit.Reported(angle, present) : start;

        void Try(PositionAngle tried)
        {
            var layout = search.At(new(centre, tried));
            if (BandLayout.Better(best, layout) != best)
            {
                (best, angle) = (layout, tried);
            }
        }
    }

    /// <summary>A single panel, or one row of them, follows nothing; an outline wider than a plane has no bands in it.</summary>
    private static bool IsWorthIt(SkyOutline outline, GridFit full) =>
        full.Panels > 2
        && outline.Corners.All(corner =>
            corner.SeparationTo(full.Frame.Pose.Centre).Degrees < 85.0
        );

    private static GridFit Chosen(GridFit full, CameraPose pose, BandLayout? layout)
    {
        if (layout is null || layout.Places.Count >= full.Panels)
        {
            return full;
        }

        var places = layout.ToPlaces();
        var (columns, rows) = places.BandsAreRows
            ? (places.LongestBand, places.Bands)
            : (places.Bands, places.LongestBand);
        return full with
        {
            Columns = columns,
            Rows = rows,
            Frame = full.Frame with { Pose = pose },
            Places = places,
            PlacedMargin = layout.Margin,
        };
    }
}
