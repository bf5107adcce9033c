using Framing.Sky;

namespace Framing.Imaging.Tests;

public sealed class PlaneSamplerTests
{
    private const int Width = 60;
    private const int Height = 50;

    public static TheoryData<Interpolation> Kinds() => [.. Enum.GetValues<Interpolation>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Row_WellWithin_SaysWhatAtSays(Interpolation kind)
    {
        var sampler = PlaneSampler.Of(kind);
        var plane = Samples();
        Span<int> index = stackalloc int[PlacesInPlane.Most];
        Span<float> alongX = stackalloc float[PlacesInPlane.Most];
        Span<float> alongY = stackalloc float[PlacesInPlane.Most];
        var places = new PlacesInPlane(index, alongX, alongY);
        var (x, y) = (new Parabola(9.3, 0.61, 0.0011), new Parabola(39.2, -0.43, 0.0007));
        places.Find(
            x with
            {
                Start = x.Start - 3.0 + sampler.Shift,
            },
            y with
            {
                Start = y.Start - 2.0 + sampler.Shift,
            },
            Width
        );
        var found = new float[PlacesInPlane.Most];
        sampler.Row(ref plane[(2 * Width) + 3], Width, places, found);

        // The weights of Lanczos are kept for steps of a thousandth of a pixel; samples differ by up to 100 a pixel.
        var tolerance = kind == Interpolation.Lanczos3 ? 0.15f : 2e-3f;
        for (var i = 0; i < found.Length; i++)
        {
            var at = new PixelPosition(x.At(i) + 1.0, y.At(i) + 1.0);
            Assert.Equal(sampler.At(plane, Width, Height, at), found[i], tolerance);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void At_MiddleOfAPixel_IsItsSample(Interpolation kind)
    {
        var (sampler, plane) = (PlaneSampler.Of(kind), Samples());
        for (var i = 0; i < plane.Length; i++)
        {
            var at = new PixelPosition((i % Width) + 1.0, (i / Width) + 1.0);
            Assert.Equal(plane[i], sampler.At(plane, Width, Height, at), 1e-4f);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void At_FlatPlaneWithHoles_StaysFlatOrUndefined(Interpolation kind)
    {
        var (sampler, plane) = (PlaneSampler.Of(kind), new float[Width * Height]);
        Array.Fill(plane, 700f);
        (plane[(20 * Width) + 30], plane[(20 * Width) + 31]) = (float.NaN, float.PositiveInfinity);
        plane.AsSpan(0, 7 * Width).Fill(float.NaN);
        var (defined, undefined) = (0, 0);
        for (var y = 0.5; y <= Height + 0.5; y += 0.23)
        {
            for (var x = 0.5; x <= Width + 0.5; x += 0.19)
            {
                var value = sampler.At(plane, Width, Height, new(x, y));
                if (float.IsNaN(value))
                {
                    undefined++;
                    Assert.True(y < 8.0 || (Math.Abs(y - 21) < 0.8 && x is > 30.2 and < 32.8));
                }
                else
                {
                    defined++;
                    Assert.Equal(700f, value, 1e-3f);
                    Assert.True(y > 6.9);
                }
            }
        }

        Assert.True(defined > 50_000 && undefined > 8_000);
    }

    /// <summary>A wave of five pixels keeps its height to 2.5 % with Lanczos-3; between its samples linear drawing loses up to a fifth.</summary>
    [Fact]
    public void At_ShortWave_LanczosKeepsIt()
    {
        var plane = new float[Width * Height];
        for (var i = 0; i < plane.Length; i++)
        {
            plane[i] = Wave(i % Width);
        }

        var (sharp, soft) = (0.0, 0.0);
        for (var x = 10.0; x < 50.0; x += 0.07)
        {
            var at = new PixelPosition(x + 1.0, 25.3);
            sharp = Math.Max(sharp, Off(Interpolation.Lanczos3));
            soft = Math.Max(soft, Off(Interpolation.Bilinear));

            double Off(Interpolation kind) =>
                Math.Abs(PlaneSampler.Of(kind).At(plane, Width, Height, at) - Wave(x));
        }

        Assert.InRange(sharp, 0.0, 2.5);
        Assert.InRange(soft, 15.0, 25.0);

        static float Wave(double x) => (float)(100.0 * Math.Sin(x * Math.Tau / 5.0));
    }

    [Fact]
    public void Of_NoSuchInterpolation_Refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PlaneSampler.Of((Interpolation)7));

    private static float[] Samples()
    {
        var random = new Random(4);
        var plane = new float[Width * Height];
        for (var i = 0; i < plane.Length; i++)
        {
            plane[i] = 500f + (100f * random.NextSingle());
        }

        return plane;
    }
}
