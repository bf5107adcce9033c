using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class AlongOutlineTests
{
    // The long side of a wide sensor lies along 30 degrees when up stands across it, at 120 or 300.
    [Theory]
    [InlineData(false, "long", null, 120.0)]
    [InlineData(false, "long", 310.0, 300.0)]
    [InlineData(false, "short", null, 30.0)]
    [InlineData(false, "short", 200.0, 210.0)]
    [InlineData(true, "long", null, 30.0)]
    [InlineData(true, "long", 250.0, 210.0)]
    [InlineData(true, "short", null, 120.0)]
    public void Choose_Strip_LaysTheSideAlongIt(
        bool tall,
        string side,
        double? present,
        double expected
    ) =>
        Assert.Equal(
            expected,
            Ask.Degrees(
                "along-outline",
                Questions.Rotation(
                    Shapes.Strip(350.0, -65.0, 3.0, 1.0, 30.0),
                    present: Shapes.Angle360(present)
                ) with
                {
                    Rig = tall ? Shapes.Tall : Shapes.Wide,
                },
                ("side", side)
            ),
            6
        );

    // A circle is a polygon of 96 sides: a strip along some side is never more than 1.875 degrees away.
    [Theory]
    [InlineData(false, "long", 77.0)]
    [InlineData(false, "short", 200.0)]
    [InlineData(true, "long", 333.0)]
    [InlineData(true, "short", 12.0)]
    public void Choose_Circle_StaysNearThePresentAngle(bool tall, string side, double present) =>
        Assert.InRange(
            Ask.Degrees(
                "along-outline",
                Questions.Rotation(
                    Shapes.Round(10.0, 20.0, 90.0),
                    present: PositionAngle.FromDegrees(present)
                ) with
                {
                    Rig = tall ? Shapes.Tall : Shapes.Wide,
                },
                ("side", side)
            ),
            present - 1.88,
            present + 1.88
        );

    [Fact]
    public void Choose_GroupOfNebulae_IsNarrowestAcrossTheLongSide()
    {
        var up = Ask.Degrees("along-outline", Questions.Rotation(Shapes.Group));

        var breadth = Extent.Of(Shapes.Group, up).Height;
        for (var other = 0.0; other < 180.0; other += 0.1)
        {
            Assert.True(Extent.Of(Shapes.Group, other).Height >= breadth - 1e-12);
        }
    }
}
