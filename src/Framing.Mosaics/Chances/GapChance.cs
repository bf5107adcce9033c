using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How likely neighbouring panels are to close, when each is shot a little off its plan.</summary>
/// <remarks>
/// <para>
/// Each panel has its own pointing error (normal, on each axis) and camera-angle error (normal), independent of the others.
/// The tightest place of a shared side of length L is o + (x1 - x2) - (L/2)|t1 - t2|; with s1 = √2·pointing sigma,
/// s2 = (L/2)·√2·angle sigma and w = hypot(s1, s2) the chance that it stays covered is Φ(o/w) - 2T(o/w, s2/s1): the sum of
/// a normal and a folded normal value is skew-normal (Azzalini 1985, Scand. J. Statist. 12, 171; T is Owen's function). An
/// error that all panels share opens nothing and does not count.
/// </para>
/// <para>
/// Dithering takes its widest step off both panels, because full depth ends where the farthest frame ends; drift takes its
/// length once, because it runs the same way for both and only one of the two sides recedes.
/// </para>
/// <para>
/// Lengths are tangents; for what mosaics overlap by, tangents and angles are one (0.01 % at 1°). The closed form takes the
/// camera-angle error as small: at a sigma of 1° it is 0.0004 low against drawn rectangles
/// (tests/reference/mosaics/t08_overlap.py).
/// </para>
/// </remarks>
public static class GapChance
{
    /// <summary>The overlap that closes for certain when every panel is shot within a tolerance of its place.</summary>
    /// <param name="tolerance">The tolerance on each axis.</param>
    /// <returns>Twice the tolerance: both panels off to their own sides.</returns>
    public static Angle CertainOverlap(Angle tolerance) => tolerance * 2.0;

    /// <summary>The standard deviation that stands for a pointing anywhere within a tolerance.</summary>
    /// <param name="tolerance">The tolerance on each axis, to which a panel is centred again and again.</param>
    /// <returns>The tolerance divided by √3: a uniform distribution.</returns>
    public static Angle SigmaWithin(Angle tolerance) => tolerance / Math.Sqrt(3.0);

    /// <summary>The chance that no gap opens between two neighbours.</summary>
    /// <param name="overlap">What they share as planned, a tangent; negative when they stand apart.</param>
    /// <param name="sharedSide">Length of the side along which they face each other, a tangent, 0 or more.</param>
    /// <param name="errors">How far from its plan a panel is likely to be shot.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is not a number or a side or an error is negative.</exception>
    public static double OfPair(double overlap, double sharedSide, PanelErrors errors)
    {
        if (!double.IsFinite(overlap))
        {
            throw new ArgumentOutOfRangeException(
                nameof(overlap),
                overlap,
                "An overlap is a finite tangent."
            );
        }

        Check(sharedSide, errors);
        var left = overlap - Lost(errors);
        var (shift, lean, both) = Spread(sharedSide, errors);
        if (both <= 0.0)
        {
            return left >= 0.0 ? 1.0 : 0.0;
        }

        if (shift <= 0.0)
        {
            return Math.Max(0.0, (2.0 * NormalDistribution.Cumulative(left / lean)) - 1.0);
        }

        var chance =
            NormalDistribution.Cumulative(left / both)
            - (2.0 * OwenFunction.T(left / both, lean / shift));
        return Math.Clamp(chance, 0.0, 1.0);
    }

    /// <summary>The chance that no gap opens between any two neighbours of a grid.</summary>
    /// <param name="field">One panel.</param>
    /// <param name="overlap">What neighbours share as planned.</param>
    /// <param name="columns">Panels along the width, 1 or more.</param>
    /// <param name="rows">Panels along the height, 1 or more.</param>
    /// <param name="errors">How far from its plan a panel is likely to be shot.</param>
    /// <returns>0 to 1; 1 for a single panel.</returns>
    /// <remarks>
    /// The pairs count as independent. Drawn grids bear that out to 0.001 as long as a panel goes astray farther by its
    /// pointing than its corners do by the camera angle. Where the angle does more, the answer is too low by up to half of
    /// what is missing to 1: the wedge that a wrong angle opens is widest at its end, and inside a grid the panels across
    /// the corner cover that. <see cref="ClosingTrials"/> and <see cref="ClosingSeries"/> draw the grid and know.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static double OfGrid(
        FieldShape field,
        PanelOverlap overlap,
        int columns,
        int rows,
        PanelErrors errors
    )
    {
        var (inRows, inColumns) = Pairs(columns, rows);
        var chance = 1.0;
        if (inRows > 0)
        {
            chance *= Math.Pow(OfPair(overlap.AlongWidth, field.TangentHeight, errors), inRows);
        }

        if (inColumns > 0)
        {
            chance *= Math.Pow(OfPair(overlap.AlongHeight, field.TangentWidth, errors), inColumns);
        }

        return chance;
    }

    /// <summary>The smallest overlap at which two neighbours close with a wanted chance.</summary>
    /// <param name="chance">The chance wanted, more than 0 and less than 1.</param>
    /// <param name="sharedSide">Length of the side along which they face each other, a tangent, 0 or more.</param>
    /// <param name="errors">How far from its plan a panel is likely to be shot.</param>
    /// <returns>The overlap, a tangent, 0 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static double SmallestOverlap(double chance, double sharedSide, PanelErrors errors)
    {
        if (!(chance is > 0.0 and < 1.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(chance),
                chance,
                "A chance to reach is more than 0 and less than 1."
            );
        }

        Check(sharedSide, errors);

        // The chance grows with the overlap; 12 sigma leave 1e-32. Halving needs no slope and ends at the last digit.
        double low = 0.0,
            high = Lost(errors) + (12.0 * Spread(sharedSide, errors).Both);
        if (OfPair(low, sharedSide, errors) >= chance)
        {
            return low;
        }

        for (var round = 0; round < 100; round++)
        {
            var middle = (low + high) / 2.0;
            if (OfPair(middle, sharedSide, errors) < chance)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return high;
    }

    /// <summary>The smallest overlaps at which a whole grid closes with a wanted chance, the same chance for each pair.</summary>
    /// <param name="chance">The chance wanted for the grid, more than 0 and less than 1.</param>
    /// <param name="field">One panel.</param>
    /// <param name="columns">Panels along the width, 1 or more.</param>
    /// <param name="rows">Panels along the height, 1 or more.</param>
    /// <param name="errors">How far from its plan a panel is likely to be shot.</param>
    /// <returns>
    /// The overlaps; 0 along an axis without neighbours. With large errors they can be larger than the panel, which then
    /// cannot close with that chance.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static PanelOverlap SmallestOverlap(
        double chance,
        FieldShape field,
        int columns,
        int rows,
        PanelErrors errors
    )
    {
        var (inRows, inColumns) = Pairs(columns, rows);
        var each = Math.Pow(chance, 1.0 / Math.Max(1L, inRows + inColumns));
        return new(
            inRows > 0 ? SmallestOverlap(each, field.TangentHeight, errors) : 0.0,
            inColumns > 0 ? SmallestOverlap(each, field.TangentWidth, errors) : 0.0
        );
    }

    private static (long InRows, long InColumns) Pairs(int columns, int rows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        return ((columns - 1L) * rows, columns * (rows - 1L));
    }

    private static double Lost(PanelErrors errors) =>
        (2.0 * errors.Dither.Radians) + errors.Drift.Radians;

    private static (double Shift, double Lean, double Both) Spread(
        double sharedSide,
        PanelErrors errors
    )
    {
        var shift = Math.Sqrt(2.0) * errors.PointingSigma.Radians;
        var lean = sharedSide / 2.0 * Math.Sqrt(2.0) * errors.CameraAngleSigma.Radians;
        return (shift, lean, double.Hypot(shift, lean));
    }

    private static void Check(double sharedSide, PanelErrors errors)
    {
        if (!(sharedSide >= 0.0 && double.IsFinite(sharedSide)))
        {
            throw new ArgumentOutOfRangeException(
                nameof(sharedSide),
                sharedSide,
                "A shared side is a finite tangent, 0 or more."
            );
        }

        if (
            errors.PointingSigma < Angle.Zero
            || errors.CameraAngleSigma < Angle.Zero
            || errors.Dither < Angle.Zero
            || errors.Drift < Angle.Zero
        )
        {
            throw new ArgumentOutOfRangeException(
                nameof(errors),
                errors,
                "Standard deviations, dithering and drift are 0 or more."
            );
        }
    }
}
