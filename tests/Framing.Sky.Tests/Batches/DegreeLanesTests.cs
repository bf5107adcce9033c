using System.Numerics;

namespace Framing.Sky.Tests;

/// <summary>1,000 arguments, some at the awkward places, against mpmath in 40 digits (tests/reference/wcs/make_polynomials.py).</summary>
public sealed class DegreeLanesTests
{
    /// <summary>Units in the last place by which an answer may be off.</summary>
    private const double Units = 2.0;

    private static readonly IReadOnlyList<double[]> Rows = TestTable.Numbers(
        "degree-functions.csv",
        "degrees,sin,cos,y,x,atan2_deg"
    );

    [Fact]
    public void Table_Counted_HoldsOneThousand() => Assert.Equal(1000, Rows.Count);

    [Fact]
    public void SinCos_EveryArgument_IsGoodToTwoUnits()
    {
        foreach (var row in Rows)
        {
            DegreeLanes.SinCos(Vector.Create(row[0]), out var sin, out var cos);
            Close(row[1], sin[0], row[0]);
            Close(row[2], cos[Vector<double>.Count - 1], row[0]);
        }
    }

    [Fact]
    public void Atan2_EveryPoint_IsGoodToTwoUnits()
    {
        foreach (var row in Rows)
        {
            var angle = DegreeLanes.Atan2(Vector.Create(row[3]), Vector.Create(row[4]));
            Close(row[5], angle[0], row[4]);
            if (row[4] >= 0.0)
            {
                angle = DegreeLanes.AtanAcross(Vector.Create(row[3]), Vector.Create(row[4]));
                Close(row[5], angle[Vector<double>.Count - 1], row[4]);
            }
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void SinCos_NotFinite_IsNotFinite(double degrees)
    {
        DegreeLanes.SinCos(Vector.Create(degrees), out var sin, out var cos);
        Assert.False(double.IsFinite(sin[0]));
        Assert.False(double.IsFinite(cos[0]));
    }

    [Fact]
    public void Atan2_NoPoint_IsNoNumber()
    {
        Assert.True(double.IsNaN(DegreeLanes.Atan2(Vector<double>.Zero, Vector<double>.Zero)[0]));
        Assert.True(
            double.IsNaN(DegreeLanes.Atan2(Vector.Create(double.NaN), Vector<double>.One)[0])
        );
    }

    private static void Close(double expected, double actual, double argument)
    {
        var unit = Math.BitIncrement(Math.Abs(expected)) - Math.Abs(expected);
        Assert.True(
            Math.Abs(actual - expected) <= Units * unit,
            FormattableString.Invariant(
                $"{argument:R}: {actual:R} is {Math.Abs(actual - expected) / unit:0.0} units from {expected:R}."
            )
        );
    }
}
