using Framing.Sky;

namespace Framing.Fits.Tests;

public sealed class WorldCoordinatesReaderTests
{
    private static readonly string[] Plain =
    [
        "CTYPE1  = 'RA---TAN'",
        "CTYPE2  = 'DEC--TAN'",
        "CRPIX1  = 30.5",
        "CRPIX2  = 20.5",
        "CRVAL1  = 38.2",
        "CRVAL2  = 61.4",
        "CD1_1   = -0.001",
        "CD1_2   = 0.0",
        "CD2_1   = 0.0",
        "CD2_2   = 0.001",
    ];

    /// <summary>300 random headers of every linear form against wcslib 7.12 (tests/reference/fits/make.py).</summary>
    [Fact]
    public void Read_RandomHeaders_AgreesWithWcslib()
    {
        var points = 0;
        var headers = 0;
        foreach (var entry in TestData.Json("wcs", "answers.json").EnumerateArray())
        {
            headers++;
            var cards = entry
                .GetProperty("cards")
                .EnumerateArray()
                .Select(card => card.GetString()!);
            var world = Assert.IsType<TanWorldCoordinates>(Read(cards).Coordinates);
            foreach (var point in entry.GetProperty("points").EnumerateArray())
            {
                points++;
                var numbers = TestData.Doubles(point);
                var pixel = new PixelPosition(numbers[0], numbers[1]);
                var expected = SkyDirection.FromDegrees(numbers[2], numbers[3]);
                Assert.InRange(
                    world.PixelToSky(pixel).SeparationTo(expected).Arcseconds,
                    0.0,
                    1e-6
                );
                Assert.True(world.TrySkyToPixel(expected, out var back));

                // 1e-6 arcsec of the sky in pixels, and the digits of the pixel numbers themselves.
                var tolerance = 1e-6 + (1e-6 / world.Matrix.Scale.Arcseconds);
                Assert.Equal(pixel.X, back.X, tolerance);
                Assert.Equal(pixel.Y, back.Y, tolerance);
            }
        }

        Assert.Equal((300, 1800), (headers, points));
    }

    [Fact]
    public void Read_NoCtype_IsNoSolutionAndNoWarning()
    {
        var solution = Read([]);

        Assert.Null(solution.Coordinates);
        Assert.Contains("no solution", solution.WhyNone, StringComparison.Ordinal);
        Assert.Empty(solution.Warnings);
    }

    [Theory]
    [InlineData("CTYPE1  = 'RA---HPX'", "CTYPE2  = 'DEC--HPX'", "HPX")]
    [InlineData("CTYPE1  = 'GLON-TAN'", "CTYPE2  = 'GLAT-TAN'", "GLON")]
    [InlineData("CTYPE1  = 'RA---TAN'", "CTYPE2  = 'DEC--SIN'", "DEC--SIN")]
    [InlineData("CTYPE1  = 'RA---TAN'", "CTYPE2  = 'RA---TAN'", "CTYPE2")]
    [InlineData("CTYPE1  = 'LINEAR'", "CTYPE2  = 'LINEAR'", "LINEAR")]
    [InlineData("CRVAL1  = 'abc'", "", "CRVAL1")]
    [InlineData("CRVAL1  =", "", "CRVAL1")]
    [InlineData("CRVAL2  = 90.5", "", "CRVAL2")]
    [InlineData("CRPIX1  = 1,5", "", "CRPIX1")]
    [InlineData("CRPIX1  = 1E30", "", "CRPIX1")]
    [InlineData("CD1_1   = x", "", "CD1_1")]
    [InlineData("CD2_2   = 0.0", "", "CD2_2")]
    [InlineData("CD1_1   = 1E200", "CD2_2   = 1E200", "CD matrix")]
    [InlineData("CD1_1   = 1E20", "CD2_2   = 1E20", "size of a pixel")]
    [InlineData("CUNIT1  = 'furlong'", "", "CUNIT1")]
    [InlineData("LONPOLE = 'up'", "", "LONPOLE")]
    [InlineData("PV1_2   = 95.0", "", "PV1_2")]
    [InlineData("RADESYS = 'GAPPT'", "", "GAPPT")]
    [InlineData("EQUINOX = 19.5", "", "EQUINOX")]
    public void Read_UnusableCard_SaysWhyAndGivesNoPlace(string first, string second, string names)
    {
        var changed = new[] { first, second }.Where(card => card.Length > 0).ToArray();
        var cards = Plain
            .Where(card => !Array.Exists(changed, other => other[..8] == card[..8]))
            .Concat(changed);

        var solution = Read(cards);

        Assert.Null(solution.Coordinates);
        Assert.Contains(names, solution.WhyNone, StringComparison.Ordinal);
        Assert.Contains(solution.WhyNone!, solution.Warnings, StringComparer.Ordinal);
    }

    [Fact]
    public void Read_NoSizeOfAPixel_IsNoSolution()
    {
        var solution = Read(Plain.Where(card => !card.StartsWith("CD", StringComparison.Ordinal)));

        Assert.Null(solution.Coordinates);
        Assert.Contains("CDELT1", solution.WhyNone, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ContradictingPole_SaysWhy()
    {
        // A cylinder's reference point at 40 degrees needs a pole within 50 degrees of LONPOLE = 0 or 180.
        var solution = Read([
            .. Plain.Where(card => !card.StartsWith("CTYPE", StringComparison.Ordinal)),
            "CTYPE1  = 'RA---CAR'",
            "CTYPE2  = 'DEC--CAR'",
            "LONPOLE = 90.0",
        ]);

        Assert.Null(solution.Coordinates);
        Assert.Contains("LONPOLE", solution.WhyNone, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A_ORDER = 10", "A_ORDER")]
    [InlineData("A_1_1   = 'x'", "A_1_1")]
    public void Read_SipTermsThatAreNone_SayWhy(string card, string names)
    {
        var solution = Read([
            "CTYPE1  = 'RA---TAN-SIP'",
            "CTYPE2  = 'DEC--TAN-SIP'",
            .. Plain.Skip(2),
            card.StartsWith("A_ORDER", StringComparison.Ordinal) ? "B_ORDER = 2" : "A_ORDER = 2",
            card,
        ]);

        Assert.Null(solution.Coordinates);
        Assert.Contains(names, solution.WhyNone, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("CPDIS1  = 'LOOKUP'", DistortionKind.Other)]
    [InlineData("A_ORDER = 3", DistortionKind.Sip)]
    public void Read_DistortionThatDoesNotCount_IsToldOfWithOneWarning(
        string card,
        DistortionKind kind
    )
    {
        var solution = Read(Plain.Append(card));

        Assert.IsType<TanWorldCoordinates>(solution.Coordinates);
        Assert.Equal(kind, solution.Distortion);
        Assert.False(solution.DistortionUsed);
        Assert.Contains("not used", Assert.Single(solution.Warnings), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PV1_5   = 0.1")]
    [InlineData("PV2_4   = 0.1")]
    public void Read_PvTermsUnderTan_AreTheOlderWayOfTpv(string card)
    {
        var plain = Read(Plain).Coordinates!;
        var solution = Read(Plain.Append(card));

        Assert.Equal(DistortionKind.Tpv, solution.Distortion);
        Assert.True(solution.DistortionUsed);
        Assert.Empty(solution.Warnings);

        // At 0.1 degrees along both axes the term is 0.1 x 0.01 degrees, 3.6 seconds of arc.
        var pixel = new PixelPosition(-69.5, 120.5);
        Assert.Equal(
            3.6,
            plain
                .PixelToSky(pixel)
                .SeparationTo(solution.Coordinates!.PixelToSky(pixel))
                .Arcseconds,
            0.01
        );
    }

    [Theory]
    [InlineData("RADESYS = 'FK5'", "", "FK5, equinox 2000")]
    [InlineData("RADECSYS= 'FK4'", "", "FK4, equinox 1950")]
    [InlineData("EPOCH   = 1950.0", "", "FK4, equinox 1950")]
    [InlineData("EQUINOX = 'J2000.0'", "", "FK5, equinox 2000")]
    [InlineData("RADESYS = 'ICRS'", "EQUINOX = 2015.5", "ICRS")]
    [InlineData("RADESYS = 'GAPPT'", "", "GAPPT")]
    [InlineData("RADESYS = 'J2000'", "", "FK5, equinox 2000")]
    public void Read_Frame_FollowsTheDefaultsOfTheStandard(
        string first,
        string second,
        string frame
    )
    {
        // FITS Standard 4.0, section 8.3.
        var solution = Read([
            .. Plain,
            first,
            .. second.Length > 0 ? [second] : Array.Empty<string>(),
        ]);

        Assert.Equal(frame, solution.Frame.ToString());
        Assert.NotNull(solution.AsWritten);
        Assert.Equal(
            solution.Frame.IsLikeIcrs && !first.Contains("'J2000'", StringComparison.Ordinal),
            solution.Warnings.Count == 0
        );
    }

    [Fact]
    public void Read_WrittenSolution_ComesBack()
    {
        var world = new TanWorldCoordinates(
            new(512.25, -7.5),
            SkyDirection.FromDegrees(38.175, 61.45),
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(21.2),
                Angle.FromArcseconds(3.82),
                mirrored: true
            )
        );

        var solution = WorldCoordinatesReader.Read(
            new FitsHeaderBuilder().AddSolution(world).ToHeader()
        );

        Assert.Empty(solution.Warnings);
        Assert.Equal(world.Matrix, solution.Coordinates!.Matrix);
        Assert.Equal(world.ReferencePixel, solution.Coordinates.ReferencePixel);
        Assert.InRange(
            world
                .ReferenceDirection.SeparationTo(solution.Coordinates.ReferenceDirection)
                .Arcseconds,
            0.0,
            1e-9
        );
    }

    private static HeaderSolution Read(IEnumerable<string> cards) =>
        WorldCoordinatesReader.Read(HeaderReader.ReadLines("cards", string.Join('\n', cards)));
}
