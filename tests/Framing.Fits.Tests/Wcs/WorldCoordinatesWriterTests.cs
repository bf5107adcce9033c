using Framing.Sky;

namespace Framing.Fits.Tests;

public sealed class WorldCoordinatesWriterTests
{
    private const int Width = 4144;
    private const int Height = 2822;

    private static readonly SkyDirection Centre = SkyDirection.FromDegrees(41.25, 60.9);

    private static PixelMatrix Matrix(bool mirrored) =>
        PixelMatrix.FromPositionAngle(
            PositionAngle.FromDegrees(21.2),
            Angle.FromArcseconds(3.82),
            mirrored
        );

    /// <summary>A short lens: about 9 px at the corners.</summary>
    private static SipDistortion Lens =>
        new(
            Polynomial(3, (2, 0, 1.1e-7), (1, 1, -6e-8), (3, 0, 3.1e-10), (1, 2, 3e-10)),
            Polynomial(4, (0, 2, 7e-8), (2, 1, 3e-10), (0, 3, 3.2e-10), (0, 4, 2e-15))
        );

    /// <summary>Our files before wcslib: the same directions, the same pixels back, reverse terms good for readers.</summary>
    [Fact]
    public void AddSolution_TangentPlanesWithAndWithoutDistortion_AreReadAlikeByWcslib() =>
        TestData.InFolder(folder =>
        {
            var linear = Polynomial(1, (1, 0, 1e-4), (0, 1, -2e-4));
            WorldCoordinates[] worlds =
            [
                new TanWorldCoordinates(new(2072.5, 1411.5), Centre, Matrix(false)),
                ProjectedWorldCoordinates.TanSip(new(2072.5, 1411.5), Centre, Matrix(false), Lens),
                ProjectedWorldCoordinates.TanSip(new(1800, 1600), Centre, Matrix(true), Lens),
                ProjectedWorldCoordinates.TanSip(
                    new(2072.5, 1411.5),
                    SkyDirection.FromDegrees(12.0, 90.0),
                    Matrix(false),
                    new(linear, linear)
                ),
            ];
            var paths = worlds
                .Select(
                    (_, number) =>
                        Path.Combine(folder, FormattableString.Invariant($"{number}.fits"))
                )
                .ToArray();
            foreach (var (path, world) in paths.Zip(worlds))
            {
                FitsWriter.WriteImage<byte>(
                    path,
                    Width,
                    Height,
                    1,
                    new byte[Width * Height],
                    new FitsHeaderBuilder().AddSolution(world, Width, Height)
                );
                var (warnings, errors, text) = Judge.Verify(path);
                Assert.True(warnings == 0 && errors == 0, text);
            }

            var seen = Judge.SkyOfPixels(paths);
            Assert.Equal(4, seen.Length);
            foreach (var (number, (answers, world)) in seen.Zip(worlds).Index())
            {
                var sky = answers.GetProperty("sky");
                var back = answers.GetProperty("back");
                var reverse = answers.GetProperty("reverse");
                Assert.Equal(number > 0, reverse.ValueKind == System.Text.Json.JsonValueKind.Array);
                var count = 0;
                foreach (var item in answers.GetProperty("pixels").EnumerateArray())
                {
                    var pixel = Pixel(item);
                    var direction = world.PixelToSky(pixel);
                    var theirs = SkyDirection.FromDegrees(
                        sky[count][0].GetDouble(),
                        sky[count][1].GetDouble()
                    );
                    Assert.InRange(direction.SeparationTo(theirs).Arcseconds, 0.0, 1e-6);
                    Assert.InRange(Distance(pixel, Pixel(back[count])), 0.0, 1e-6);
                    if (number > 0)
                    {
                        Assert.InRange(Distance(pixel, Pixel(reverse[count])), 0.0, 2e-3);
                    }

                    count++;
                }

                Assert.Equal(63, count);
            }
        });

    [Fact]
    public void AddSolution_WithReverseTerms_WritesThemAsTheyAre()
    {
        var (ap, bp) = (Polynomial(2, (2, 0, -1.1e-7)), Polynomial(3, (0, 3, -3.2e-10)));
        var lens = new SipDistortion(Lens.A, Lens.B, ap, bp);
        var world = ProjectedWorldCoordinates.TanSip(
            new(2072.5, 1411.5),
            Centre,
            Matrix(false),
            lens
        );

        var header = new FitsHeaderBuilder().AddSolution(world, Width, Height).ToHeader();

        Assert.Equal("RA---TAN-SIP", header.Text("CTYPE1"));
        Assert.Equal(3, header.Integer("A_ORDER"));
        Assert.Equal(4, header.Integer("B_ORDER"));
        Assert.Equal(2, header.Integer("AP_ORDER"));
        Assert.Equal(3, header.Integer("BP_ORDER"));
        Assert.Equal(-1.1e-7, header.Number("AP_2_0"));
        Assert.Equal(-3.2e-10, header.Number("BP_0_3"));
        Assert.False(header.Has("AP_0_2"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AddSolution_DistortionReadAgain_IsTheSameToTheLastDigit(bool mirrored)
    {
        var world = ProjectedWorldCoordinates.TanSip(
            new(1800, 1600),
            Centre,
            Matrix(mirrored),
            Lens
        );

        var read = WorldCoordinatesReader.Read(
            new FitsHeaderBuilder().AddSolution(world).ToHeader()
        );

        Assert.Empty(read.Warnings);
        Assert.True(read.DistortionUsed);
        Assert.Equal(DistortionKind.Sip, read.Distortion);
        var again = Assert.IsType<ProjectedWorldCoordinates>(read.Coordinates);
        Assert.Equal(world.PlaneMatrix, again.PlaneMatrix);
        for (var p = 0; p <= 4; p++)
        {
            for (var q = 0; q <= 4 - p; q++)
            {
                Assert.Equal(Lens.A[p, q], again.Sip!.A[p, q]);
                Assert.Equal(Lens.B[p, q], again.Sip.B[p, q]);
            }
        }

        Assert.Null(again.Sip!.Ap);
    }

    /// <summary>A header with its pole elsewhere: the turn goes into the matrix, and the picture stays where it was.</summary>
    [Fact]
    public void AddSolution_OtherLonpole_IsFoldedIntoTheMatrix()
    {
        NativeSphere.TryFind(41.25, 60.9, 0.0, 90.0, 150.0, null, out var sphere);
        var world = new ProjectedWorldCoordinates(
            new(2072.5, 1411.5),
            Centre,
            Matrix(false),
            SkyProjection.Find("TAN")!,
            sphere,
            Lens
        );

        var header = new FitsHeaderBuilder().AddSolution(world).ToHeader();

        var again = WorldCoordinatesReader.Read(header).Coordinates!;
        Assert.Equal(180.0, header.Number("LONPOLE"));
        foreach (var pixel in (PixelPosition[])[new(1, 1), new(4144, 1), new(900, 2822)])
        {
            Assert.InRange(
                world.PixelToSky(pixel).SeparationTo(again.PixelToSky(pixel)).Arcseconds,
                0.0,
                1e-8
            );
        }
    }

    [Theory]
    [InlineData(1, 2822)]
    [InlineData(4144, 1)]
    [InlineData(1, 1)]
    public void AddSolution_PictureOfOneLine_LeavesWhatItDoesNotSettleOut(int width, int height)
    {
        var world = ProjectedWorldCoordinates.TanSip(new(1.5, 1.5), Centre, Matrix(false), Lens);

        var header = new FitsHeaderBuilder().AddSolution(world, width, height).ToHeader();

        Assert.True(header.Has("AP_ORDER"), "AP_ORDER is written");
        Assert.Empty(WorldCoordinatesReader.Read(header).Warnings);
    }

    [Fact]
    public void AddSolution_OtherThanTangentPlanesWithSip_IsABrokenPromise()
    {
        var sphere = NativeSphere.About(Centre);
        var terms = new double[TpvDistortion.Terms];
        terms[1] = 1.0;
        WorldCoordinates[] worlds =
        [
            new ProjectedWorldCoordinates(
                new(1, 1),
                Centre,
                Matrix(false),
                SkyProjection.Find("SIN")!,
                sphere
            ),
            new ProjectedWorldCoordinates(
                new(1, 1),
                Centre,
                Matrix(false),
                SkyProjection.Find("TAN")!,
                sphere,
                tpv: new(terms, terms)
            ),
            new ProjectedWorldCoordinates(
                new(1, 1),
                Centre,
                Matrix(false),
                SkyProjection.Find("TAN")!,
                NativeSphere.About(SkyDirection.FromDegrees(41.25, 61.0))
            ),
        ];
        foreach (var world in worlds)
        {
            Assert.Throws<ArgumentException>(() => new FitsHeaderBuilder().AddSolution(world));
        }
    }

    private static PixelPolynomial Polynomial(
        int order,
        params (int P, int Q, double Value)[] terms
    ) =>
        new(
            order,
            (p, q) => terms.Where(term => (term.P, term.Q) == (p, q)).Sum(term => term.Value)
        );

    private static PixelPosition Pixel(System.Text.Json.JsonElement pair) =>
        new(pair[0].GetDouble(), pair[1].GetDouble());

    private static double Distance(PixelPosition one, PixelPosition other) =>
        double.Hypot(one.X - other.X, one.Y - other.Y);
}
