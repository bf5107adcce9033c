using System.Globalization;
using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class MosaicTests
{
    private static readonly FieldShape Field = new(
        2.0 * Math.Tan(Angle.FromDegrees(2.25).Radians),
        2.0 * Math.Tan(Angle.FromDegrees(1.5).Radians)
    );

    private static readonly PanelOverlap Overlap = new(
        0.15 * Field.TangentWidth,
        0.15 * Field.TangentHeight
    );

    [Fact]
    public void Grid_CheckValuesOfPanelAngles_AreMet()
    {
        var entries = CheckValues.Starting("mosaic-psi-");
        Assert.Equal(3, entries.Count);
        foreach (var entry in entries)
        {
            // Their column 0 is the eastern one, our first; their row 1 the northern one, our first.
            var panel = Worked(entry.Input("dec0"), CameraTurning.TurnedAtEachPanel).At(1, 1);
            entry.Meets("ra", panel.Pose.Centre.RightAscension.Degrees);
            entry.Meets("dec", panel.Pose.Centre.Declination.Degrees);
            entry.Meets("pa_grid_up", panel.Pose.PositionAngle.Degrees);

            // Turned by a quarter, the picture's up is the grid's east... where their angle is that less 90.
            var east = Mosaic.Grid(
                new(SkyDirection.FromDegrees(100.0, entry.Input("dec0")), PositionAngle.East),
                new(Field.TangentHeight, Field.TangentWidth),
                new(Overlap.AlongHeight, Overlap.AlongWidth),
                2,
                3,
                mirrored: false,
                CameraTurning.TurnedAtEachPanel
            );
            var same = east.Panels.MinBy(p => p.Pose.Centre.SeparationTo(panel.Pose.Centre))!;
            Assert.Equal(0.0, same.Pose.Centre.SeparationTo(panel.Pose.Centre).Arcseconds, 1e-8);
            entry.Meets("pa_grid_east_axis_minus90", same.Pose.PositionAngle.Degrees - 90.0);
        }
    }

    [Fact]
    public void Grid_TableOfPanelsAndAngles_IsReproduced()
    {
        var rows = CheckValues.Table("mosaic_panels");
        Assert.Equal(36, rows.Count);
        foreach (var row in rows)
        {
            var mosaic = Worked(CheckValues.Number(row[0]), CameraTurning.TurnedAtEachPanel);
            var words = row[1].Split(' ');
            var panel = mosaic.At(
                int.Parse(words[1], CultureInfo.InvariantCulture) + 1,
                2 - int.Parse(words[3], CultureInfo.InvariantCulture)
            );
            Assert.Equal(
                CheckValues.Number(row[2]),
                panel.Pose.Centre.RightAscension.Degrees,
                5.1e-6
            );
            Assert.Equal(CheckValues.Number(row[3]), panel.Pose.Centre.Declination.Degrees, 5.1e-6);
            var turn = PositionAngle.North.TurnTo(panel.Pose.PositionAngle).Degrees;
            Assert.Equal(CheckValues.Number(row[4]), turn, 5.1e-5);
        }
    }

    [Fact]
    public void Grid_CameraLeftAlone_KeepsItsAngleToThePole()
    {
        var mosaic = Worked(70.0, CameraTurning.LeftAlone);

        Assert.All(
            mosaic.Panels,
            panel =>
                Assert.Equal(
                    0.0,
                    PositionAngle.North.TurnTo(panel.Pose.PositionAngle).Degrees,
                    1e-12
                )
        );
    }

    [Fact]
    public void Grid_CameraLeftAloneUnderThePoleOfDate_KeepsItsAngleToThatPole()
    {
        // The pole of 2050, about 1000" from the ICRS pole towards right ascension 0h.
        var pole = SkyDirection.FromDegrees(0.0, 90.0 - (1002.0 / 3600.0));
        var middle = SkyDirection.FromDegrees(100.0, 80.0);
        var angle = PositionAngle.FromDegrees(30.0);

        var mosaic = Mosaic.Grid(
            new(middle, angle),
            Field,
            Overlap,
            3,
            2,
            mirrored: false,
            CameraTurning.LeftAlone,
            pole
        );

        var toPole = middle.PositionAngleTo(pole).TurnTo(angle).Degrees;
        Assert.All(
            mosaic.Panels,
            panel =>
                Assert.Equal(
                    toPole,
                    panel
                        .Pose.Centre.PositionAngleTo(pole)
                        .TurnTo(panel.Pose.PositionAngle)
                        .Degrees,
                    1e-10
                )
        );
        Assert.Contains(
            mosaic.Panels,
            panel => Math.Abs(angle.TurnTo(panel.Pose.PositionAngle).Degrees) > 0.01
        );
        var south = Mosaic.Grid(
            new(middle, angle),
            Field,
            Overlap,
            3,
            2,
            mirrored: false,
            CameraTurning.LeftAlone,
            pole.Antipode
        );
        Assert.All(
            south.Panels.Zip(mosaic.Panels),
            pair =>
                Assert.Equal(
                    0.0,
                    pair.First.Pose.PositionAngle.TurnTo(pair.Second.Pose.PositionAngle).Degrees,
                    1e-10
                )
        );
    }

    [Theory]
    [InlineData(0.0, false)]
    [InlineData(0.0, true)]
    [InlineData(130.0, false)]
    [InlineData(130.0, true)]
    public void Grid_AnyAngle_CountsPanelsInReadingOrderAsDisplayed(double angle, bool mirrored)
    {
        var pose = new CameraPose(
            SkyDirection.FromDegrees(0.4, 35.0),
            PositionAngle.FromDegrees(angle)
        );

        var mosaic = Mosaic.Grid(
            pose,
            Field,
            Overlap,
            3,
            2,
            mirrored,
            CameraTurning.TurnedAtEachPanel
        );

        // The display from its definition: up at the angle, right a quarter turn clockwise, mirrored counter-clockwise.
        var up = pose.PositionAngle;
        var right = up.TurnedBy(Angle.FromDegrees(mirrored ? 90.0 : -90.0));
        var plane = new TangentPlane(pose.Centre);
        for (var i = 0; i < 6; i++)
        {
            var panel = mosaic.Panels[i];
            Assert.Equal(
                (i + 1, (i % 3) + 1, (i / 3) + 1),
                (panel.Number, panel.Column, panel.Row)
            );
            Assert.Same(panel, mosaic.At(panel.Column, panel.Row));
            var place = plane.Project(panel.Pose.Centre);
            Assert.Equal(
                (panel.Column - 2) * 0.85 * Field.TangentWidth,
                Along(place, right),
                1e-14
            );
            Assert.Equal((1.5 - panel.Row) * 0.85 * Field.TangentHeight, Along(place, up), 1e-14);

            // Corners run top-left, top-right, bottom-right, bottom-left as displayed.
            var corners = panel.Corners.Select(plane.Project).ToArray();
            Assert.True(Along(corners[0], right) < Along(corners[1], right));
            Assert.True(Along(corners[3], right) < Along(corners[2], right));
            Assert.True(Along(corners[0], up) > Along(corners[3], up));
            Assert.True(Along(corners[1], up) > Along(corners[2], up));
        }
    }

    [Fact]
    public void Grid_MirroredPicture_CoversTheSameSky()
    {
        var pose = new CameraPose(
            SkyDirection.FromDegrees(0.4, 35.0),
            PositionAngle.FromDegrees(20.0)
        );
        var plain = Mosaic.Grid(
            pose,
            Field,
            Overlap,
            3,
            2,
            mirrored: false,
            CameraTurning.TurnedAtEachPanel
        );

        var mirrored = Mosaic.Grid(
            pose,
            Field,
            Overlap,
            3,
            2,
            mirrored: true,
            CameraTurning.TurnedAtEachPanel
        );

        for (var row = 1; row <= 2; row++)
        {
            for (var column = 1; column <= 3; column++)
            {
                var (a, b) = (plain.At(column, row).Pose, mirrored.At(4 - column, row).Pose);
                Assert.Equal(0.0, a.Centre.SeparationTo(b.Centre).Arcseconds, 1e-9);
                Assert.Equal(0.0, a.PositionAngle.TurnTo(b.PositionAngle).Degrees, 1e-12);
            }
        }
    }

    [Fact]
    public void Grid_OddGrid_HasItsOwnPoseInTheMiddle()
    {
        var pose = new CameraPose(
            SkyDirection.FromDegrees(11.0, 89.0),
            PositionAngle.FromDegrees(20.0)
        );

        var mosaic = Mosaic.Grid(
            pose,
            Field,
            Overlap,
            3,
            3,
            mirrored: false,
            CameraTurning.LeftAlone
        );

        Assert.Equal(pose, mosaic.At(2, 2).Pose);
    }

    [Theory]
    [InlineData(10.0, 90.0)]
    [InlineData(359.9, 89.3)]
    [InlineData(0.0, -90.0)]
    [InlineData(0.0, 0.0)]
    [InlineData(180.0, -47.0)]
    public void Grid_TurnedAtEachPanel_NeighboursShareTheOverlapAnywhere(double ra, double dec)
    {
        var pose = new CameraPose(
            SkyDirection.FromDegrees(ra, dec),
            PositionAngle.FromDegrees(17.0)
        );

        var mosaic = Mosaic.Grid(
            pose,
            Field,
            Overlap,
            3,
            2,
            mirrored: false,
            CameraTurning.TurnedAtEachPanel
        );

        var plane = new TangentPlane(pose.Centre);
        var right = pose.PositionAngle.TurnedBy(Angle.FromDegrees(-90.0));
        for (var row = 1; row <= 2; row++)
        {
            for (var column = 1; column <= 2; column++)
            {
                // Middles of the facing sides: half way between their corners.
                var (left, next) = (mosaic.At(column, row), mosaic.At(column + 1, row));
                var hers = plane.Project(left.Corners[1].MidpointTo(left.Corners[2]));
                var his = plane.Project(next.Corners[0].MidpointTo(next.Corners[3]));
                var shared = Along(hers, right) - Along(his, right);

                // Away from the middle the plane stretches a panel a little: 0.3 % of its side at 4 degrees.
                Assert.InRange(
                    shared,
                    Overlap.AlongWidth,
                    Overlap.AlongWidth + (0.006 * Field.TangentWidth)
                );
            }
        }
    }

    [Fact]
    public void Grid_MorePanelsThanAnyMosaicHas_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Mosaic.Grid(
                default,
                Field,
                Overlap,
                50_000,
                50_000,
                mirrored: false,
                CameraTurning.LeftAlone
            )
        );

    private static Mosaic Worked(double declination, CameraTurning turning) =>
        Mosaic.Grid(
            new(SkyDirection.FromDegrees(100.0, declination), PositionAngle.North),
            Field,
            Overlap,
            3,
            2,
            mirrored: false,
            turning
        );

    private static double Along(PlanePoint point, PositionAngle direction) =>
        (point.Xi * Math.Sin(direction.Radians)) + (point.Eta * Math.Cos(direction.Radians));
}
