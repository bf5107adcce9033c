using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How far neighbouring panels reach into each other, and where that is less than wanted.</summary>
public static class NeighbourSides
{
    /// <summary>How far all neighbours of a mosaic reach into each other, without the rest of what it covers.</summary>
    /// <param name="mosaic">The mosaic.</param>
    /// <returns>Every pair of neighbours: those of the rows first, in reading order.</returns>
    public static IReadOnlyList<SharedSide> Of(Mosaic mosaic)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        return
        [
            .. mosaic.Neighbours.Pairs.Select(pair =>
                Measured(
                    mosaic.Panels[pair.First],
                    mosaic.Panels[pair.Second],
                    pair.AlongWidth,
                    mosaic.Field,
                    mosaic.Mirrored
                ).Side
            ),
        ];
    }

    /// <summary>The sky that one of two neighbours covers and both should: as wide as the mosaic's overlap, along every side that they share.</summary>
    /// <param name="mosaic">The mosaic.</param>
    /// <param name="grace">What may be missing before it counts, 0 or more.</param>
    /// <returns>
    /// Wedges and strips, each by its corners in order. One pair can have two, one in either panel. What no panel covers
    /// between the sides is a gap and not among them.
    /// </returns>
    public static IReadOnlyList<IReadOnlyList<SkyDirection>> Thin(Mosaic mosaic, Angle grace)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        return
        [
            .. mosaic.Neighbours.Pairs.SelectMany(pair =>
            {
                var overlap = pair.AlongWidth
                    ? mosaic.Overlap.AlongWidth
                    : mosaic.Overlap.AlongHeight;
                var (fromFirst, fromSecond, _) = Looks(
                    mosaic.Panels[pair.First],
                    mosaic.Panels[pair.Second],
                    pair.AlongWidth,
                    mosaic.Field,
                    mosaic.Mirrored,
                    overlap
                );
                return new[] { fromFirst, fromSecond }
                    .Where(look =>
                        look.Depth is { } depth
                        && Math.Min(depth.Low, depth.High) < overlap - grace.Radians
                    )
                    .Select(look => look.Thin);
            }),
        ];
    }

    internal static (SharedSide Side, IReadOnlyList<SkyDirection>[] Gaps) Measured(
        Panel first,
        Panel second,
        bool sideBySide,
        FieldShape field,
        bool mirrored
    )
    {
        var (fromFirst, fromSecond, halfDepth) = Looks(
            first,
            second,
            sideBySide,
            field,
            mirrored,
            wanted: 0.0
        );
        Angle least,
            greatest;
        if (fromFirst.Depth is { } a && fromSecond.Depth is { } b)
        {
            double[] depths = [a.Low, a.High, b.Low, b.High];
            least = FacingSides.AtRim(halfDepth, depths.Min());
            greatest = FacingSides.AtRim(halfDepth, depths.Max());
        }
        else
        {
            least = greatest = -(sideBySide ? field.Width : field.Height);
        }

        return (
            new(first.Number, second.Number, sideBySide, least, greatest),
            [fromFirst.Gap, fromSecond.Gap]
        );
    }

    private static (FacingSides FromFirst, FacingSides FromSecond, double HalfDepth) Looks(
        Panel first,
        Panel second,
        bool sideBySide,
        FieldShape field,
        bool mirrored,
        double wanted
    )
    {
        var (across, along) = (field.TangentWidth / 2.0, field.TangentHeight / 2.0);
        var (halfDepth, halfSide) = sideBySide ? (across, along) : (along, across);

        // Corners run top-left 0, top-right 1, bottom-right 2, bottom-left 3. A quarter turn clockwise from up is right.
        var right = Angle.FromDegrees(mirrored ? 90.0 : -90.0);
        var turn = sideBySide ? right : Angle.FromDegrees(180.0);
        var fromFirst = FacingSides.Look(
            first.Pose,
            first.Pose.PositionAngle.TurnedBy(turn),
            halfDepth,
            halfSide,
            second.Corners[0],
            second.Corners[sideBySide ? 3 : 1],
            wanted
        );
        var fromSecond = FacingSides.Look(
            second.Pose,
            second.Pose.PositionAngle.TurnedBy(turn).Opposite,
            halfDepth,
            halfSide,
            first.Corners[2],
            first.Corners[sideBySide ? 1 : 3],
            wanted
        );
        return (fromFirst, fromSecond, halfDepth);
    }
}
