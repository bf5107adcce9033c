using Framing.Sky;

namespace Framing.Solving;

/// <summary>The shape of a triangle of stars: what stays the same when the picture is moved, turned or scaled.</summary>
/// <param name="MiddleToLongest">Middle side over longest, 0 to 1.</param>
/// <param name="ShortestToLongest">Shortest side over longest, 0 to 1.</param>
/// <param name="LongestToShortest">Longest side over shortest, 1 and more.</param>
/// <param name="Cosine">Cosine of the angle between the longest and the shortest side.</param>
/// <param name="Orientation">
/// +1 when the corners, taken from the one opposite the longest side to the one opposite the shortest, run
/// counter-clockwise with y up; -1 when clockwise; 0 when they lie on a line. A mirrored picture changes its sign.
/// </param>
/// <param name="OppositeLongest">Which of the three points lies opposite the longest side: 0, 1 or 2.</param>
/// <param name="OppositeMiddle">Which lies opposite the middle side.</param>
/// <param name="OppositeShortest">Which lies opposite the shortest side.</param>
/// <remarks>
/// Sources: side ratios of Valdes et al. 1995, PASP 107, 1119; ratio and cosine of Groth 1986, AJ 91, 1244.
/// </remarks>
public readonly record struct TriangleShape(
    double MiddleToLongest,
    double ShortestToLongest,
    double LongestToShortest,
    double Cosine,
    int Orientation,
    int OppositeLongest,
    int OppositeMiddle,
    int OppositeShortest
)
{
    /// <summary>The shape of three points.</summary>
    /// <param name="first">Point 0.</param>
    /// <param name="second">Point 1.</param>
    /// <param name="third">Point 2.</param>
    /// <returns>The shape.</returns>
    /// <exception cref="ArgumentException">Two of the points are the same, or one is not finite.</exception>
    public static TriangleShape Of(PixelPosition first, PixelPosition second, PixelPosition third)
    {
        PixelPosition[] points = [first, second, third];
        double[] opposite =
        [
            Distance(second, third),
            Distance(third, first),
            Distance(first, second),
        ];
        if (opposite.Any(side => !(side > 0.0) || !double.IsFinite(side)))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"A triangle needs three places: {first}, {second}, {third}."
                ),
                nameof(third)
            );
        }

        int[] order = [0, 1, 2];
        Array.Sort(order, (left, right) => opposite[right].CompareTo(opposite[left]));
        var (a, b, c) = (opposite[order[0]], opposite[order[1]], opposite[order[2]]);

        // The longest side ends at the corners opposite the two others; the shortest too: they share the corner
        // opposite the middle side.
        var cosine = ((a * a) + (c * c) - (b * b)) / (2.0 * a * c);
        return new(
            b / a,
            c / a,
            a / c,
            cosine,
            Math.Sign(Cross(points[order[0]], points[order[1]], points[order[2]])),
            order[0],
            order[1],
            order[2]
        );
    }

    private static double Distance(PixelPosition from, PixelPosition to) =>
        double.Hypot(to.X - from.X, to.Y - from.Y);

    private static double Cross(PixelPosition a, PixelPosition b, PixelPosition c) =>
        ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
}
