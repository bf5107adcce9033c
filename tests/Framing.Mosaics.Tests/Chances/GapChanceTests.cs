using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class GapChanceTests
{
    [Fact]
    public void OfPair_CheckValues_AreMet()
    {
        var entries = CheckValues.Starting("ovl-p-");
        Assert.Equal(4, entries.Count);
        foreach (var entry in entries)
        {
            entry.Meets(
                "p_no_gap",
                GapChance.OfPair(
                    Arcminutes(entry.Input("overlap_arcmin")),
                    Arcminutes(entry.Input("shared_side_arcmin")),
                    Errors(entry.Input("sigma_arcmin"), entry.Input("sigma_rot_deg"))
                )
            );
        }
    }

    [Fact]
    public void SmallestOverlap_CheckValues_AreMet()
    {
        var entries = CheckValues.Starting("ovl-need-");
        Assert.Equal(3, entries.Count);
        foreach (var entry in entries)
        {
            var overlap = GapChance.SmallestOverlap(
                entry.Input("P"),
                Arcminutes(entry.Input("shared_side_arcmin")),
                Errors(entry.Input("sigma_arcmin"), entry.Input("sigma_rot_deg"))
            );
            entry.Meets("overlap_arcmin", Angle.FromRadians(overlap).Arcminutes);
        }
    }

    [Fact]
    public void SmallestOverlap_WithoutCameraAngleError_IsTheNormalQuantile()
    {
        var entry = CheckValues.One("ovl-norot");

        var overlap = GapChance.SmallestOverlap(
            entry.Input("P"),
            0.05,
            Errors(entry.Input("sigma_arcmin"), entry.Input("sigma_rot_deg"))
        );

        entry.Meets("overlap_over_sigma", Angle.FromRadians(overlap).Arcminutes);
    }

    [Fact]
    public void SmallestOverlap_TableFor99PerCent_IsReproduced()
    {
        var rows = CheckValues.Table("overlap99");
        Assert.Equal(25, rows.Count);
        foreach (var row in rows)
        {
            var errors = Errors(CheckValues.Number(row[0]), CheckValues.Number(row[1]));
            var inRow = GapChance.SmallestOverlap(0.99, Arcminutes(180.0), errors);
            var inColumn = GapChance.SmallestOverlap(0.99, Arcminutes(270.0), errors);
            Near(row[2], Angle.FromRadians(inRow).Arcminutes, 0.0051);
            Near(row[4], Angle.FromRadians(inColumn).Arcminutes, 0.0051);

            // Drawn two million times at that overlap: within 4 standard errors.
            Near(row[6], GapChance.OfPair(inRow, Arcminutes(180.0), errors), 2.9e-4);

            // All seven pairs of three columns and two rows.
            var grid = GapChance.SmallestOverlap(
                0.99,
                new(Arcminutes(270.0), Arcminutes(180.0)),
                3,
                2,
                errors
            );
            Near(row[8], Angle.FromRadians(grid.AlongWidth).Arcminutes, 0.0051);
            Assert.Equal(
                0.99,
                GapChance.OfGrid(new(Arcminutes(270.0), Arcminutes(180.0)), grid, 3, 2, errors),
                1e-12
            );
        }
    }

    [Fact]
    public void OfPair_DrawnRectangles_Agree()
    {
        // 20,000 draws each with full rectangle geometry: t08_overlap.py of the references; within 4 standard errors.
        (double Overlap, double Sigma, double Turn, double Drawn)[] cases =
        [
            (16.5, 5, 0.3, 0.9892),
            (27.0, 10, 0.5, 0.9654),
            (8.0, 2, 1.0, 0.9749),
            (10.0, 5, 0.0, 0.9215),
        ];
        foreach (var (overlap, sigma, turn, drawn) in cases)
        {
            var error = Math.Sqrt(drawn * (1.0 - drawn) / 20_000.0);
            Assert.Equal(
                drawn,
                GapChance.OfPair(Arcminutes(overlap), Arcminutes(180.0), Errors(sigma, turn)),
                4.0 * error
            );
        }
    }

    [Theory]
    [InlineData(3.0, 0.2)]
    [InlineData(5.0, 1.5)]
    [InlineData(1.0, 0.0)]
    [InlineData(0.0, 0.7)]
    public void OfPair_DrawnErrors_Agree(double sigma, double turn)
    {
        // The tightest place of a shared side, drawn from its definition.
        const int Draws = 200_000;
        const double Overlap = 6.0,
            Side = 200.0;
        var random = new Random(8);
        var closed = 0;
        for (var i = 0; i < Draws; i++)
        {
            var shift = sigma * (Normal() - Normal());
            var lean = Angle.FromDegrees(turn * (Normal() - Normal())).Radians;
            closed += Overlap + shift - (Side / 2.0 * Math.Abs(lean)) >= 0.0 ? 1 : 0;
        }

        var chance = GapChance.OfPair(Arcminutes(Overlap), Arcminutes(Side), Errors(sigma, turn));

        Assert.Equal(
            (double)closed / Draws,
            chance,
            4.0 * Math.Sqrt(chance * (1.0 - chance) / Draws)
        );

        double Normal() =>
            Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
            * Math.Cos(Math.Tau * random.NextDouble());
    }

    [Fact]
    public void OfPair_DitheringAndDrift_AreTakenOffTheOverlap()
    {
        var plain = Errors(5.0, 0.5);
        var more = plain with
        {
            Dither = Angle.FromArcminutes(1.5),
            Drift = Angle.FromArcminutes(2.0),
        };

        Assert.Equal(
            GapChance.OfPair(Arcminutes(15.0), Arcminutes(180.0), plain),
            GapChance.OfPair(Arcminutes(20.0), Arcminutes(180.0), more),
            1e-14
        );
        Assert.Equal(
            GapChance.SmallestOverlap(0.99, Arcminutes(180.0), plain) + Arcminutes(5.0),
            GapChance.SmallestOverlap(0.99, Arcminutes(180.0), more),
            1e-12
        );
    }

    [Theory]
    [InlineData(0.001, 1.0)]
    [InlineData(0.0, 1.0)]
    [InlineData(-0.001, 0.0)]
    public void OfPair_NoErrors_IsCertainEitherWay(double overlap, double expected) =>
        Assert.Equal(expected, GapChance.OfPair(overlap, 0.05, default));

    [Fact]
    public void OfGrid_SinglePanel_IsCertain() =>
        Assert.Equal(1.0, GapChance.OfGrid(new(0.08, 0.05), default, 1, 1, Errors(20.0, 1.0)));

    [Fact]
    public void CertainOverlap_CheckValueOfRecentring_IsMet()
    {
        var entry = CheckValues.One("ovl-recentre");
        var tolerance = Angle.FromArcminutes(entry.Input("tolerance_arcmin"));

        entry.Meets("overlap_needed_worst_case", GapChance.CertainOverlap(tolerance).Arcminutes);
        entry.Meets("sigma_equivalent", GapChance.SigmaWithin(tolerance).Arcminutes);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    [InlineData(double.NaN)]
    public void SmallestOverlap_ChanceThatIsNone_Throws(double chance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            GapChance.SmallestOverlap(chance, 0.05, Errors(1.0, 0.1))
        );

    [Fact]
    public void OfPair_NegativeError_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            GapChance.OfPair(0.01, 0.05, Errors(-1.0, 0.1))
        );

    [Fact]
    public void Entries_OfThisTopic_AreAllAnsweredButRefraction()
    {
        // Squeezing by refraction belongs to altitudes, not to mosaics.
        var topic = CheckValues.Starting("ovl-").Select(CheckValues.Id).ToList();
        Assert.Equal(15, topic.Count);
        Assert.Equal(
            ["ovl-diffrefr-30"],
            topic.Where(id =>
                !id.StartsWith("ovl-p-", StringComparison.Ordinal)
                && !id.StartsWith("ovl-need-", StringComparison.Ordinal)
                && !id.StartsWith("ovl-commonrot-", StringComparison.Ordinal)
                && id is not ("ovl-norot" or "ovl-owen" or "ovl-recentre")
            )
        );
    }

    private static double Arcminutes(double value) => Angle.FromArcminutes(value).Radians;

    private static PanelErrors Errors(double arcminutes, double degrees) =>
        new(Angle.FromArcminutes(arcminutes), Angle.FromDegrees(degrees), Angle.Zero, Angle.Zero);

    private static void Near(string cell, double value, double tolerance) =>
        Assert.Equal(CheckValues.Number(cell), value, tolerance);
}
