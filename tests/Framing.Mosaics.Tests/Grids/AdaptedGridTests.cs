using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class AdaptedGridTests
{
    private static readonly FieldShape Field = new(0.0767, 0.0522);

    private static readonly PanelOverlap Overlap = new(
        0.15 * Field.TangentWidth,
        0.15 * Field.TangentHeight
    );

    private static readonly Angle Margin = Angle.FromArcminutes(8.0);

    [Fact]
    public void LargestMargin_OfTwoHundredBentOutlines_TakesFewerPanelsThatCloseAsOften()
    {
        var random = new Random(4);
        var errors = new PanelErrors(
            Angle.FromArcminutes(6.0),
            Angle.FromDegrees(1.0),
            Angle.FromArcseconds(20.0),
            Angle.FromArcminutes(3.0)
        );
        const int Trials = 2000;
        List<double> savings = [];
        List<string> off = [];
        for (var i = 0; i < 200; i++)
        {
            var outline = Bent(random);
            var full = Fit(outline, GridWish.Fewest);
            var adapted = Fit(outline, GridWish.Adapted);
            savings.Add(1.0 - ((double)adapted.Panels / full.Panels));

            var mosaic = Laid(adapted);
            var coverage = CoverageMeasure.Of(mosaic, outline);
            var one = ClosingTrials
                .Of(Laid(full), errors, settings: new() { Trials = Trials })
                .ChanceNoGap;
            var other = ClosingTrials
                .Of(mosaic, errors, settings: new() { Trials = Trials })
                .ChanceNoGap;
            var room = 4.0 * Math.Sqrt(((one * (1.0 - one)) + (other * (1.0 - other))) / Trials);
            if (
                adapted.Panels > full.Panels
                || !adapted.HoldsMargin
                || coverage.TargetCoveredFraction < 1.0 - 1e-9
                || coverage.GapArea.SquareArcminutes > 0.01
                || other < one - room - 0.001
            )
            {
                off.Add(
                    FormattableString.Invariant(
                        $"{i}: {full.Panels} {adapted.Panels}, closes {one} {other}, covers {coverage.TargetCoveredFraction}, gap {coverage.GapArea.SquareArcminutes}"
                    )
                );
            }
        }

        Assert.True(off.Count == 0, string.Join("\n", off));
        savings.Sort();
        Assert.True(savings[100] >= 0.15, FormattableString.Invariant($"median {savings[100]}"));
    }

    [Fact]
    public void LargestMargin_OfACompactOutline_StaysAFullRectangle()
    {
        var outline = SkyOutline.Rectangle(
            SkyDirection.FromDegrees(80.0, 20.0),
            Angle.FromDegrees(7.0),
            Angle.FromDegrees(11.0),
            PositionAngle.North
        );

        var adapted = Fit(outline, GridWish.Adapted);

        Assert.Null(adapted.Places);
        Assert.Equal(Fit(outline, GridWish.Fewest).Panels, adapted.Panels);
    }

    [Fact]
    public void Placed_AMirroredPicture_CoversTheSameSky()
    {
        var outline = Bent(new Random(7));
        var adapted = Fit(outline, GridWish.Adapted);

        var plain = Laid(adapted);
        var mirrored = Laid(adapted, mirrored: true);

        Assert.NotNull(adapted.Places);
        Assert.False(plain.IsRectangle);
        Assert.All(
            plain.Panels,
            panel =>
                Assert.Contains(
                    mirrored.Panels,
                    other => other.Pose.Centre.SeparationTo(panel.Pose.Centre).Arcseconds < 1e-6
                )
        );
        Assert.Equal(
            CoverageMeasure.Of(plain, outline).Area.Steradians,
            CoverageMeasure.Of(mirrored, outline).Area.Steradians,
            1e-12
        );
    }

    [Fact]
    public void Placed_AtThePlacesOfAGrid_HasItsNeighboursAndMeetings()
    {
        var pose = new CameraPose(SkyDirection.FromDegrees(10.0, 40.0), PositionAngle.North);
        var (right, up) = (
            Field.TangentWidth - Overlap.AlongWidth,
            Field.TangentHeight - Overlap.AlongHeight
        );
        List<(double, double)> places = [];
        for (var i = 0; i < 12; i++)
        {
            var (row, column) = Math.DivRem(i, 4);
            places.Add((right * (column - 1.5), up * (1.0 - row)));
        }

        var placed = Mosaic.Placed(
            pose,
            Field,
            Overlap,
            new(bandsAreRows: true, places),
            mirrored: false,
            CameraTurning.LeftAlone
        );
        var grid = Mosaic.Grid(
            pose,
            Field,
            Overlap,
            4,
            3,
            mirrored: false,
            CameraTurning.LeftAlone
        );

        Assert.Equal(grid.Neighbours.Pairs, placed.Neighbours.Pairs);
        Assert.Equal(grid.Neighbours.Meetings.Order(), placed.Neighbours.Meetings.Order());
        Assert.All(
            grid.Panels.Zip(placed.Panels),
            pair =>
            {
                Assert.Equal(
                    (pair.First.Column, pair.First.Row),
                    (pair.Second.Column, pair.Second.Row)
                );
                Assert.True(
                    pair.First.Pose.Centre.SeparationTo(pair.Second.Pose.Centre).Arcseconds < 1e-6
                );
            }
        );
    }

    private static GridFit Fit(SkyOutline outline, GridWish grid) =>
        MosaicFit.LargestMargin(outline, Field, Overlap, grid, Margin.Radians, 10_000);

    private static Mosaic Laid(GridFit fit, bool mirrored = false) =>
        fit.Places is { } places
            ? Mosaic.Placed(
                fit.Frame.Pose,
                Field,
                Overlap,
                places,
                mirrored,
                CameraTurning.TurnedAtEachPanel
            )
            : Mosaic.Grid(
                fit.Frame.Pose,
                Field,
                Overlap,
                fit.Columns,
                fit.Rows,
                mirrored,
                CameraTurning.TurnedAtEachPanel
            );

    /// <summary>A stretch of a ring, 8 to 30 degrees long, bent by 60 to 240 degrees, thinner towards its ends.</summary>
    private static SkyOutline Bent(Random random)
    {
        var dec = Math.Asin((2.0 * random.NextDouble()) - 1.0) * 180.0 / Math.PI;
        var plane = new TangentPlane(
            SkyDirection.FromDegrees(360.0 * random.NextDouble(), Math.Clamp(dec, -89.9, 89.9))
        );
        var length = (8.0 + (22.0 * random.NextDouble())) * Math.PI / 180.0;
        var bend = (60.0 + (180.0 * random.NextDouble())) * Math.PI / 180.0;
        var breadth = (0.5 + (2.0 * random.NextDouble())) * Math.PI / 180.0;
        var (sin, cos) = Math.SinCos(Math.PI * random.NextDouble());
        const int Steps = 24;
        SkyDirection[] corners =
        [
            .. Enumerable.Range(0, Steps + 1).Select(i => Place((double)i / Steps, breadth / 2.0)),
            .. Enumerable
                .Range(0, Steps + 1)
                .Select(i => Place(1.0 - ((double)i / Steps), -breadth / 2.0)),
        ];
        return new([new SkyPolygon(corners)]);

        SkyDirection Place(double along, double outward)
        {
            var (s, c) = Math.SinCos((along - 0.5) * bend);
            var radius = (length / bend) + (outward * Math.Sin(Math.PI * (0.15 + (0.7 * along))));
            var (x, y) = (radius * s, (radius * c) - (length / bend));
            return plane.Unproject(new((x * cos) - (y * sin), (x * sin) + (y * cos)));
        }
    }
}
