namespace Framing.Drawing.Tests;

public sealed class HatchTests
{
    [Fact]
    public void Over_SquareWithAHole_LinesStayBetween()
    {
        var rings = Lines.Rectangle(new(100.0, 100.0, 300.0, 300.0));
        var hole = new Box(150.0, 150.0, 250.0, 250.0);
        rings.Add(Lines.Rectangle(hole).Runs[0].Points, closed: true);
        var hatch = Hatch.Over(rings, new(0.0, 0.0, 1000.0, 1000.0), 6.0);
        var length = 0.0;
        hatch.ForEachPiece(
            (from, to) =>
            {
                length += (to - from).Length;
                var middle = (from + to) * 0.5;
                Assert.True(rings.Hold(middle));
                Assert.False(hole.Grown(-1e-6).Holds(middle));
                Assert.Equal(from.X + from.Y, to.X + to.Y, 1e-9);
            }
        );

        // Lines 6 px apart over an area cover area / 6 px of length.
        Assert.Equal((40000.0 - 10000.0) / 6.0, length, 60.0);
    }
}
