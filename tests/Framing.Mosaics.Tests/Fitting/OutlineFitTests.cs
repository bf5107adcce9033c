using System.Globalization;
using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class OutlineFitTests
{
    private static readonly FieldShape Wide = new(
        2.0 * Math.Tan(Angle.FromDegrees(2.25).Radians),
        2.0 * Math.Tan(Angle.FromDegrees(1.5).Radians)
    );

    private static readonly SkyOutline Pentagon = new([
        new SkyPolygon([
            SkyDirection.FromDegrees(80.0, 70.6),
            SkyDirection.FromDegrees(84.5, 70.9),
            SkyDirection.FromDegrees(90.0, 72.2),
            SkyDirection.FromDegrees(86.5, 73.4),
            SkyDirection.FromDegrees(79.0, 72.9),
        ]),
    ]);

    [Fact]
    public void LargestMargin_CheckValueOnTheSky_IsMet()
    {
        var entry = CheckValues.One("fit-sky-iteration");

        var frame = OutlineFit.LargestMargin(Pentagon, Wide);

        entry.Meets("ra", frame.Pose.Centre.RightAscension.Degrees);
        entry.Meets("dec", frame.Pose.Centre.Declination.Degrees);
        entry.Meets("pa_up_mod180", frame.Pose.PositionAngle.Degrees);
        entry.Meets("margin_tan", frame.TangentMargin);
        Assert.Equal(frame.Pose.PositionAngle.Degrees + 180.0, frame.Alternative.Degrees, 1e-9);
    }

    [Theory]
    [InlineData(150.0, 168.637)]
    [InlineData(350.0, 348.637)]
    [InlineData(10.0, 348.637)]
    public void LargestMargin_KnownCameraAngle_ReportsTheNearerOfTheTwoOpposites(
        double present,
        double expected
    )
    {
        var frame = OutlineFit.LargestMargin(Pentagon, Wide, PositionAngle.FromDegrees(present));

        Assert.Equal(expected, frame.Pose.PositionAngle.Degrees, 1e-3);
    }

    [Fact]
    public void LargestMargin_SinglePoint_LeavesTheCameraAsItIs()
    {
        var star = SkyDirection.FromDegrees(0.0, 89.9999);
        var outline = new SkyOutline([new SkyPolygon([star, star, star])]);

        var frame = OutlineFit.LargestMargin(outline, Wide, PositionAngle.FromDegrees(251.5));

        Assert.Equal(251.5, frame.Pose.PositionAngle.Degrees, 1e-9);
        Assert.Equal(0.0, frame.Pose.Centre.SeparationTo(star).Arcseconds, 1e-9);
        Assert.Equal(Wide.TangentHeight / 2.0, frame.TangentMargin, 1e-15);
    }

    [Fact]
    public void LargestMargin_SinglePointWithoutPresentAngle_IsNorthUp()
    {
        var star = SkyDirection.FromDegrees(123.0, -45.0);

        var frame = OutlineFit.LargestMargin(new([new SkyPolygon([star, star, star])]), Wide);

        Assert.Equal(PositionAngle.North, frame.Pose.PositionAngle);
    }

    [Fact]
    public void LargestMargin_RectangleOfTheFramesShape_LiesAlongItExactly()
    {
        // A frame a tenth larger than the rectangle: only one angle leaves 5 % of each side... of the shorter one.
        var centre = SkyDirection.FromDegrees(359.9, 12.0);
        var pose = new CameraPose(centre, PositionAngle.FromDegrees(33.0));
        var inner = new FieldShape(Wide.TangentWidth * 0.9, Wide.TangentHeight * 0.9);
        var outline = new SkyOutline([new SkyPolygon(inner.Corners(pose, mirrored: false))]);

        var frame = OutlineFit.SmallestScale(outline, Wide, PositionAngle.FromDegrees(40.0));

        Assert.Equal(33.0, frame.Pose.PositionAngle.Degrees, 1e-9);
        Assert.Equal(0.9, frame.Scale, 1e-12);
        Assert.Equal(0.0, frame.Pose.Centre.SeparationTo(centre).Arcseconds, 1e-8);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(77.0)]
    [InlineData(283.0)]
    public void AtAngle_AnyAngle_PutsTheOutlineInTheMiddleBothWays(double angle)
    {
        var given = PositionAngle.FromDegrees(angle);

        var frame = OutlineFit.AtAngle(Pentagon, Wide, given);

        Assert.Equal(given, frame.Pose.PositionAngle);
        var (u, v) = OutlineMeasure.Offsets(Pentagon, frame.Pose);
        Assert.Equal(0.0, u.Max() + u.Min(), 1e-14);
        Assert.Equal(0.0, v.Max() + v.Min(), 1e-14);
        Assert.Equal(OutlineMeasure.Margin(Pentagon, Wide, frame.Pose), frame.TangentMargin, 1e-14);
    }

    [Theory]
    [InlineData(89.9)]
    [InlineData(90.0)]
    [InlineData(-89.99)]
    public void AtAngle_OutlineAroundAPole_IsInTheMiddle(double declination)
    {
        var outline = SkyOutline.Ellipse(
            SkyDirection.FromDegrees(10.0, declination),
            Angle.FromDegrees(3.0),
            Angle.FromDegrees(1.0),
            PositionAngle.FromDegrees(20.0)
        );

        var frame = OutlineFit.AtAngle(outline, Wide, PositionAngle.FromDegrees(60.0));

        var (u, v) = OutlineMeasure.Offsets(outline, frame.Pose);
        Assert.Equal(0.0, u.Max() + u.Min(), 1e-12);
        Assert.Equal(0.0, v.Max() + v.Min(), 1e-12);
    }

    [Theory]
    [InlineData(0.0, 90.0, 0.0)]
    [InlineData(75.0, 90.0, 0.0)]
    [InlineData(75.0, -90.0, 0.0)]
    [InlineData(0.0, -90.0, 33.0)]
    [InlineData(210.0, 89.9999999, 33.0)]
    public void LargestMargin_OutlineCentredOnAPole_IsFoundAgainByItsAngle(
        double rightAscension,
        double declination,
        double angle
    )
    {
        // 520' by 320' about the pole: the frame's centre is the pole but for rounding, which must not set the angle.
        var outline = SkyOutline.Rectangle(
            SkyDirection.FromDegrees(rightAscension, declination),
            Angle.FromArcminutes(520.0),
            Angle.FromArcminutes(320.0),
            PositionAngle.FromDegrees(angle)
        );

        var best = OutlineFit.LargestMargin(outline, Wide);
        var again = OutlineFit.AtAngle(outline, Wide, best.Pose.PositionAngle);

        Assert.Equal(best.TangentMargin, again.TangentMargin, 1e-9);
        Assert.Equal(OutlineMeasure.Margin(outline, Wide, best.Pose), best.TangentMargin, 1e-9);
    }

    [Fact]
    public void LongAxis_Ellipse_RunsAlongItsMajorAxis()
    {
        var centre = SkyDirection.FromDegrees(200.0, -62.0);
        var outline = SkyOutline.Ellipse(
            centre,
            Angle.FromDegrees(4.0),
            Angle.FromDegrees(1.0),
            PositionAngle.FromDegrees(115.0)
        );

        var axis = OutlineFit.LongAxis(outline);

        Assert.Equal(115.0, axis.Along.Degrees, 1e-6);
        Assert.Equal(0.0, axis.Centre.SeparationTo(centre).Arcseconds, 1e-6);
        Assert.Equal(
            2.0 * Math.Tan(Angle.FromDegrees(0.5).Radians),
            axis.Breadth,
            1e-3 * axis.Breadth
        );
        Assert.Equal(25.0, axis.CameraAngle(Wide).Degrees, 1e-6);
        Assert.Equal(205.0, axis.CameraAngle(Wide, PositionAngle.FromDegrees(200.0)).Degrees, 1e-6);
        Assert.Equal(
            115.0,
            axis.CameraAngle(new(Wide.TangentHeight, Wide.TangentWidth)).Degrees,
            1e-6
        );
    }

    [Fact]
    public void LongAxis_RandomOutlines_IsTheNarrowestStrip()
    {
        var random = new Random(99);
        for (var run = 0; run < 150; run++)
        {
            var outline = RandomOutlines.OnTheSky(random);
            var axis = OutlineFit.LongAxis(outline);
            for (var i = 0; i < 90; i++)
            {
                var breadth = OutlineMeasure.Breadth(outline, axis.Centre, Math.PI * i / 90.0);
                Assert.True(breadth >= axis.Breadth - (1e-9 * axis.Length) - 1e-14);
            }
        }
    }

    [Fact]
    public void LargestMargin_TenThousandRandomOutlines_NoDenseSearchBeatsIt()
    {
        var random = new Random(20260731);
        double worstGain = double.NegativeInfinity,
            worstMargin = 0.0;
        for (var run = 0; run < 10_000; run++)
        {
            var outline = RandomOutlines.OnTheSky(random);
            var size = Math.Max(Math.Tan(outline.Radius.Radians), 1e-4);
            var field = new FieldShape(
                size * (0.5 + (2.0 * random.NextDouble())),
                size * (0.5 + (2.0 * random.NextDouble()))
            );
            PositionAngle? present =
                random.Next(2) == 0 ? PositionAngle.FromDegrees(360.0 * random.NextDouble()) : null;

            var frame = OutlineFit.LargestMargin(outline, field, present);

            var scale = field.TangentWidth + field.TangentHeight;
            var again = OutlineMeasure.Margin(outline, field, frame.Pose);
            worstMargin = Math.Max(worstMargin, Math.Abs(again - frame.TangentMargin));
            var searched = OutlineMeasure.DenseSearch(outline, field, frame.Pose.Centre);
            worstGain = Math.Max(worstGain, (searched - frame.TangentMargin) / scale);
            Assert.True(
                worstGain <= 1e-9 && worstMargin <= 1e-12,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"run {run}: searched {searched:R}, fitted {frame.TangentMargin:R}, again {again:R}, centre {frame.Pose.Centre}, radius {outline.Radius}"
                )
            );
        }
    }
}
