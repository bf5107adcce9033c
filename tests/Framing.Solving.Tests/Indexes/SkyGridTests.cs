using Framing.Sky;

namespace Framing.Solving.Tests;

public sealed class SkyGridTests
{
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.3)]
    public void Gather_AnyCone_MissesNoStar(double step)
    {
        var random = new Random(4);
        const int Count = 3000;
        var directions = new SkyDirection[Count];
        var rightAscension = new double[Count];
        var declination = new double[Count];
        for (var star = 0; star < Count; star++)
        {
            directions[star] = SkyDirection.FromRaDec(
                Angle.FromRadians(random.NextDouble() * Math.Tau),
                Angle.FromRadians(Math.Asin((2.0 * random.NextDouble()) - 1.0))
            );
            rightAscension[star] = directions[star].RightAscension.Radians;
            declination[star] = directions[star].Declination.Radians;
        }

        var grid = new SkyGrid(rightAscension, declination, Count, step);
        var found = new StarBuffer();
        SkyDirection[] centres =
        [
            SkyDirection.NorthPole,
            SkyDirection.SouthPole,
            SkyDirection.FromDegrees(0.0, 0.0),
            SkyDirection.FromDegrees(359.99, 60.0),
            SkyDirection.FromDegrees(0.01, -85.0),
            .. directions.Take(60),
        ];
        foreach (var centre in centres)
        {
            foreach (var radius in new[] { 0.001, 0.02, 0.2, 1.0, 3.0 })
            {
                found.Clear();
                grid.Gather(
                    centre.RightAscension.Radians,
                    centre.Declination.Radians,
                    radius,
                    found
                );
                var got = found.Items.ToArray();
                Assert.Equal(got.Length, got.Distinct().Count());
                var inside = Enumerable
                    .Range(0, Count)
                    .Where(star => centre.SeparationTo(directions[star]).Radians <= radius);
                Assert.Empty(inside.Except(got));
            }
        }
    }
}
