using System.Globalization;

namespace Framing.Sky.Tests;

public sealed class EquatorialFrameTests
{
    private static readonly List<string[]> Places =
    [
        .. TestData
            .Text("frames.csv")
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Skip(1)
            .Select(line => line.Split(',')),
    ];

    /// <summary>ERFA 2.0.0 and astropy 5.2.1 (tests/reference/wcs/make_frames.py); each row has its own tolerance.</summary>
    [Fact]
    public void ToIcrs_FiveHundredPlaces_AgreeWithErfaAndAstropy()
    {
        Assert.Equal(500, Places.Count);
        Assert.All(
            Places,
            fields =>
            {
                var (frame, there, icrs) = Read(fields);
                var tolerance = Number(fields[7]);
                Assert.InRange(frame.ToIcrs(there).SeparationTo(icrs).Arcseconds, 0.0, tolerance);
                Assert.InRange(frame.FromIcrs(icrs).SeparationTo(there).Arcseconds, 0.0, tolerance);
            }
        );
    }

    [Fact]
    public void FromIcrs_OfItsOwnAnswer_ComesBack()
    {
        Assert.All(
            Places,
            fields =>
            {
                var (frame, there, _) = Read(fields);
                Assert.InRange(
                    frame.FromIcrs(frame.ToIcrs(there)).SeparationTo(there).Arcseconds,
                    0.0,
                    1e-9
                );
            }
        );
    }

    [Fact]
    public void ToIcrs_WorldCoordinates_ShowTheSamePlaces()
    {
        var pixel = new PixelPosition(12.0, 70.0);
        var tan = new TanWorldCoordinates(
            new(50.0, 40.0),
            SkyDirection.FromDegrees(52.31, 88.714),
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(31.0),
                Angle.FromDegrees(0.05),
                mirrored: false
            )
        );
        var sip = ProjectedWorldCoordinates.TanSip(
            tan.ReferencePixel,
            tan.ReferenceDirection,
            tan.Matrix,
            new(
                new(2, (p, q) => p + q == 2 ? 1e-4 : 0.0),
                new(2, (p, q) => p + q == 2 ? -2e-4 : 0.0)
            )
        );
        foreach (
            var frame in new[]
            {
                EquatorialFrame.Icrs,
                EquatorialFrame.Fk5(2026.4),
                EquatorialFrame.Fk4(1950.0, 1950.0),
            }
        )
        {
            foreach (var world in new WorldCoordinates[] { tan, sip })
            {
                var carried = frame.ToIcrs(world);

                var expected = frame.ToIcrs(world.PixelToSky(pixel));
                Assert.InRange(
                    carried.PixelToSky(pixel).SeparationTo(expected).Arcseconds,
                    0.0,
                    1e-8
                );
                Assert.True(carried.TrySkyToPixel(expected, out var back));
                Assert.Equal(pixel.X, back.X, 1e-8);
                Assert.Equal(pixel.Y, back.Y, 1e-8);
                Assert.InRange(
                    carried
                        .Binned(2.0)
                        .PixelToSky(
                            new(((pixel.X - 0.5) / 2.0) + 0.5, ((pixel.Y - 0.5) / 2.0) + 0.5)
                        )
                        .SeparationTo(expected)
                        .Arcseconds,
                    0.0,
                    1e-8
                );
            }
        }

        Assert.IsType<TanWorldCoordinates>(EquatorialFrame.Fk5(2026.4).ToIcrs(tan));
    }

    [Theory]
    [InlineData(1499.0)]
    [InlineData(2501.0)]
    [InlineData(double.NaN)]
    public void Frame_OfAYearOutOfRange_IsRefused(double year)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => EquatorialFrame.Fk5(year));
        Assert.Throws<ArgumentOutOfRangeException>(() => EquatorialFrame.Fk4(year, 1950.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => EquatorialFrame.Fk4(1950.0, year));
    }

    private static (EquatorialFrame Frame, SkyDirection There, SkyDirection Icrs) Read(
        string[] fields
    ) =>
        (
            fields[0] == "FK5"
                ? EquatorialFrame.Fk5(Number(fields[1]))
                : EquatorialFrame.Fk4(Number(fields[1]), Number(fields[2])),
            SkyDirection.FromDegrees(Number(fields[3]), Number(fields[4])),
            SkyDirection.FromDegrees(Number(fields[5]), Number(fields[6]))
        );

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
