using System.Text.Json;
using Framing.Sky;

namespace Framing.Solving.Tests;

/// <summary>The check values of topic 11; each entry names its source.</summary>
public sealed class RegistrationChecks
{
    [Fact]
    public void Entries_AreAllHere() => Assert.Equal(12, TestTable.Count);

    [Fact]
    public void Triangle_SideRatios_AsValdes()
    {
        var entry = TestTable.Entry("reg-tri");
        var shape = Triangle(entry);
        Assert.Equal(entry.Number("expect", "b_over_a"), shape.MiddleToLongest, 1e-9);
        Assert.Equal(entry.Number("expect", "c_over_a"), shape.ShortestToLongest, 1e-9);
        Assert.Equal(entry.Number("expect", "orientation"), shape.Orientation);
        var order = entry.GetProperty("expect").GetProperty("vertex_order_opposite_longest_first");
        Assert.Equal(order[0].GetInt32(), shape.OppositeLongest);
        Assert.Equal(order[1].GetInt32(), shape.OppositeMiddle);
        Assert.Equal(order[2].GetInt32(), shape.OppositeShortest);
    }

    [Fact]
    public void Triangle_RatioAndCosine_AsGroth()
    {
        var entry = TestTable.Entry("reg-tri-groth");
        var shape = Triangle(entry);
        Assert.Equal(
            entry.Number("expect", "ratio_longest_shortest"),
            shape.LongestToShortest,
            1e-9
        );
        Assert.Equal(entry.Number("expect", "cosine"), shape.Cosine, 1e-9);
    }

    [Fact]
    public void Quad_Code_AsLang()
    {
        var entry = TestTable.Entry("reg-quad");
        var shape = QuadShape.Of([.. Points(entry)]);
        var code = entry.GetProperty("expect").GetProperty("code");
        Assert.Equal(code[0].GetDouble(), shape.Cx, 1e-9);
        Assert.Equal(code[1].GetDouble(), shape.Cy, 1e-9);
        Assert.Equal(code[2].GetDouble(), shape.Dx, 1e-9);
        Assert.Equal(code[3].GetDouble(), shape.Dy, 1e-9);
    }

    [Theory]
    [InlineData("reg-two-star-n")]
    [InlineData("reg-two-star-m")]
    public void TwoStars_GiveCentreScaleAndAngle(string id)
    {
        var entry = TestTable.Entry(id);
        var placed = Placed(
            entry,
            entry.GetProperty("inputs").GetProperty("mirrored").GetBoolean()
        );
        var tolerance = entry.GetProperty("tolerance");
        Assert.Equal(
            entry.Number("expect", "ra"),
            placed.ReferenceDirection.RightAscension.Degrees,
            tolerance.GetProperty("ra").GetDouble()
        );
        Assert.Equal(
            entry.Number("expect", "dec"),
            placed.ReferenceDirection.Declination.Degrees,
            tolerance.GetProperty("dec").GetDouble()
        );
        Assert.Equal(
            entry.Number("expect", "scale_arcsec_px"),
            placed.Matrix.Scale.Arcseconds,
            tolerance.GetProperty("scale_arcsec_px").GetDouble()
        );
        Assert.Equal(
            entry.Number("expect", "pa_up"),
            placed.Matrix.PositionAngleOfY.Degrees,
            tolerance.GetProperty("pa_up").GetDouble()
        );
    }

    [Fact]
    public void TwoStars_WithTheWrongParity_MissTheThird()
    {
        var entry = TestTable.Entry("reg-parity-third-star");
        var inputs = entry.GetProperty("inputs");
        var size = TestTable.Entry("reg-two-star-n");
        var wrong = MarkedStars.Place(
            Match(inputs, 0),
            Match(inputs, 1),
            (int)size.Number("inputs", "nx"),
            (int)size.Number("inputs", "ny"),
            mirrored: true
        );
        Assert.NotNull(wrong);
        Assert.True(
            wrong.TrySkyToPixel(
                TestTable.Direction(inputs.GetProperty("third_sky")),
                out var predicted
            )
        );
        var seen = TestTable.Pixel(inputs.GetProperty("third_pixel"));
        Assert.Equal(
            entry.Number("expect", "wrong_parity_third_star_miss_px"),
            double.Hypot(predicted.X - seen.X, predicted.Y - seen.Y),
            entry.GetProperty("tolerance").GetDouble()
        );
    }

    [Fact]
    public void SixtyStars_NineOfThemWrong_FitAsTheReference()
    {
        var entry = TestTable.Entry("reg-tan-fit");
        var fit = FieldFitter.Fit(
            TestTable.RegisterStars(),
            (int)entry.Number("inputs", "nx"),
            (int)entry.Number("inputs", "ny"),
            FitModel.Linear
        );
        Assert.NotNull(fit);
        var centre = fit.Linear.ReferenceDirection;
        Assert.Equal(entry.Number("expect", "ra"), centre.RightAscension.Degrees, 1e-5);
        Assert.Equal(entry.Number("expect", "dec"), centre.Declination.Degrees, 1e-5);
        Assert.Equal(
            entry.Number("expect", "scale_arcsec_px"),
            fit.Linear.Matrix.Scale.Arcseconds,
            1e-5
        );
        Assert.Equal(
            entry.Number("expect", "pa_up"),
            fit.Linear.Matrix.PositionAngleOfY.Degrees,
            1e-4
        );
        Assert.Equal(entry.Number("expect", "rms_px_per_axis"), fit.RmsPixels, 0.01);
        Assert.Equal(
            entry
                .GetProperty("expect")
                .GetProperty("rejected_rows_zero_based")
                .EnumerateArray()
                .Select(row => row.GetInt32()),
            fit.Rejected
        );
    }

    [Fact]
    public void Precision_OfAnEvenField_AsPropagated()
    {
        var entry = TestTable.Entry("reg-precision");
        var precision = FieldPrecision.Expected(
            (int)entry.Number("inputs", "N"),
            entry.Number("inputs", "sigma_px"),
            (int)entry.Number("inputs", "nx"),
            (int)entry.Number("inputs", "ny"),
            Angle.FromArcseconds(1.0)
        );
        Within(entry.Number("expect", "centre_px"), precision.Centre.Arcseconds, 0.1);
        Within(entry.Number("expect", "scale_rel"), precision.RelativeScale, 0.1);
        Within(entry.Number("expect", "rotation_arcsec"), precision.Angle.Arcseconds, 0.1);
    }

    [Fact]
    public void Precision_OfTheFittedStars_IsThatOfAnEvenField()
    {
        // The covariance of the fit itself, against the closed formula of reg-precision; 51 random places are even to about a fifth.
        var fit = FieldFitter.Fit(TestTable.RegisterStars(), 6248, 4176, FitModel.Linear)!;
        var expected = FieldPrecision.Expected(
            51,
            fit.RmsPixels,
            6248,
            4176,
            fit.Linear.Matrix.Scale
        );
        Within(expected.Centre.Arcseconds, fit.Precision.Centre.Arcseconds, 0.25);
        Within(expected.RelativeScale, fit.Precision.RelativeScale, 0.25);
        Within(expected.Angle.Arcseconds, fit.Precision.Angle.Arcseconds, 0.25);
    }

    [Theory]
    [InlineData("reg-sip-1-1")]
    [InlineData("reg-sip-6248-4176")]
    public void Distortion_OfAFrame_AsPublishedPolynomials(string id)
    {
        var inputs = TestTable.Entry(id).GetProperty("inputs");
        var fit = Bent(inputs);
        var pixel = TestTable.Pixel(inputs.GetProperty("pixel"));
        var seen = fit.Coordinates.PixelToSky(pixel);
        Assert.Equal(TestTable.Entry(id).Number("expect", "ra"), seen.RightAscension.Degrees, 1e-8);
        Assert.Equal(TestTable.Entry(id).Number("expect", "dec"), seen.Declination.Degrees, 1e-8);
        Assert.True(fit.Coordinates.TrySkyToPixel(seen, out var back));
        Assert.Equal(pixel.X, back.X, 1e-6);
        Assert.Equal(pixel.Y, back.Y, 1e-6);
    }

    [Fact]
    public void Distortion_CoefficientsAnAxis_AsCounted()
    {
        var entry = TestTable.Entry("reg-sip-count");
        var orders = entry.GetProperty("inputs").GetProperty("order").EnumerateArray();
        var counts = entry.GetProperty("expect").GetProperty("coefficients_per_axis");
        Assert.Equal(
            counts.EnumerateArray().Select(count => count.GetInt32()),
            orders.Select(order => PlaneFit.TermsPerAxisOf(order.GetInt32()))
        );
    }

    [Theory]
    [InlineData(1, FitModel.Linear)]
    [InlineData(2, FitModel.Order2)]
    [InlineData(3, FitModel.Order3)]
    [InlineData(4, FitModel.Order4)]
    [InlineData(5, FitModel.Order5)]
    public void Distortion_Residual_ByOrder(int order, FitModel model)
    {
        var entry = TestTable.Entry("reg-sip-order");
        var fit = FieldFitter.Fit(BentStars(), 6248, 4176, model, keepAll: true);
        Assert.NotNull(fit);
        var expected = entry
            .GetProperty("expect")
            .GetProperty("rms")
            .GetProperty(FormattableString.Invariant($"{order}"))
            .GetDouble();

        // 0.02 px; 10 % for the orders that leave the distortion in, as the entry says.
        Assert.Equal(expected, fit.RmsPixels, order <= 2 ? 0.1 * expected : 0.02);
        Assert.Empty(fit.Rejected);
    }

    [Fact]
    public void FitWhatPays_OfACubicLens_TakesOrder3()
    {
        var fit = FieldFitter.FitWhatPays(BentStars(), 6248, 4176);
        Assert.NotNull(fit);
        Assert.Equal(FitModel.Order3, fit.Model);
    }

    [Fact]
    public void FitWhatPays_OfAStraightLens_StaysPlain()
    {
        var fit = FieldFitter.FitWhatPays(TestTable.RegisterStars(), 6248, 4176);
        Assert.NotNull(fit);
        Assert.Equal(FitModel.Linear, fit.Model);
    }

    /// <summary>300 stars through the distortion of reg-sip-*, with 0.2 px of noise along each axis.</summary>
    private static List<StarMatch> BentStars()
    {
        var lens = Bent(TestTable.Entry("reg-sip-1-1").GetProperty("inputs"));
        var random = new Random(11);
        var stars = new List<StarMatch>();
        for (var i = 0; i < 300; i++)
        {
            PixelPosition place = new(
                1.0 + (random.NextDouble() * 6247.0),
                1.0 + (random.NextDouble() * 4175.0)
            );
            stars.Add(
                new(
                    new(place.X + (0.2 * Normal(random)), place.Y + (0.2 * Normal(random))),
                    lens.Coordinates.PixelToSky(place)
                )
            );
        }

        return stars;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
        * Math.Cos(Math.Tau * random.NextDouble());

    private static FieldFit Bent(JsonElement inputs)
    {
        var linear = new TanWorldCoordinates(
            TestTable.Pixel(inputs.GetProperty("crpix")),
            TestTable.Direction(inputs.GetProperty("crval")),
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(inputs.GetProperty("pa_up").GetDouble()),
                Angle.FromArcseconds(inputs.GetProperty("scale_arcsec_px").GetDouble()),
                mirrored: false
            )
        );
        return new(
            linear,
            new SipDistortion(Table(inputs, "A"), Table(inputs, "B")),
            FitModel.Order3,
            [],
            [],
            0.0,
            0.0,
            default
        );
    }

    private static PixelPolynomial Table(JsonElement inputs, string axis)
    {
        var table = new double[4, 4];
        foreach (var term in inputs.GetProperty(axis).EnumerateObject())
        {
            table[term.Name[2] - '0', term.Name[4] - '0'] = term.Value.GetDouble();
        }

        return new(3, (p, q) => table[p, q]);
    }

    private static TanWorldCoordinates Placed(JsonElement entry, bool mirrored)
    {
        var inputs = entry.GetProperty("inputs");
        var placed = MarkedStars.Place(
            Match(inputs, 0),
            Match(inputs, 1),
            inputs.GetProperty("nx").GetInt32(),
            inputs.GetProperty("ny").GetInt32(),
            mirrored
        );
        Assert.NotNull(placed);
        return placed;
    }

    private static StarMatch Match(JsonElement inputs, int star) =>
        new(
            TestTable.Pixel(inputs.GetProperty("pixels")[star]),
            TestTable.Direction(inputs.GetProperty("sky")[star])
        );

    private static IEnumerable<PixelPosition> Points(JsonElement entry) =>
        entry.GetProperty("inputs").GetProperty("points").EnumerateArray().Select(TestTable.Pixel);

    private static TriangleShape Triangle(JsonElement entry)
    {
        var points = Points(entry).ToArray();
        return TriangleShape.Of(points[0], points[1], points[2]);
    }

    private static void Within(double expected, double actual, double share) =>
        Assert.InRange(actual, expected * (1.0 - share), expected * (1.0 + share));
}
