using System.Globalization;
using Framing.Sky;

namespace Framing.Solving.Tests;

/// <summary>What came of many lists.</summary>
internal sealed class ListScore
{
    private readonly Lock gate = new();
    private readonly List<string> wrong = [];
    private readonly List<string> unsolved = [];
    private double centrePulls;
    private double anglePulls;

    public int Lists { get; private set; }

    public int Solved { get; private set; }

    /// <summary>Solved with the middle within 1 px.</summary>
    public int Centred { get; private set; }

    /// <summary>Solved with the angle within the larger of 0.01 degrees and four predicted sigma.</summary>
    public int Turned { get; private set; }

    public double LargestChance { get; private set; }

    public IReadOnlyList<string> Wrong => wrong;

    public IReadOnlyList<string> Unsolved => unsolved;

    public double SolvedShare => (double)Solved / Lists;

    public double CentredShare => (double)Centred / Solved;

    public double TurnedShare => (double)Turned / Solved;

    /// <summary>Root mean square of the centre's error over its predicted sigma, one axis; 1 if the prediction is honest.</summary>
    public double CentrePull => Math.Sqrt(centrePulls / (2.0 * Solved));

    /// <summary>Root mean square of the angle's error over its predicted sigma.</summary>
    public double AnglePull => Math.Sqrt(anglePulls / Solved);

    /// <summary>Solves lists by number, on two threads, and counts.</summary>
    public static ListScore Of(int count, Func<int, (StarList List, SolveRequest Request)> make)
    {
        var score = new ListScore();
        Parallel.For(
            0,
            count,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            number =>
            {
                var (list, request) = make(number);
                score.Add(number, list, FrameSolver.Solve(request));
            }
        );
        return score;
    }

    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Lists} lists, {Solved} solved, {Centred} within 1 px, {Turned} turned right, {wrong.Count} wrong, pulls {CentrePull:0.00} {AnglePull:0.00}, largest chance {LargestChance:0e+0}; {string.Join("; ", wrong.Concat(unsolved).Take(8))}"
        );

    private void Add(int number, StarList list, SolveAnswer answer)
    {
        lock (gate)
        {
            Lists++;
            if (answer.Solution is not { } solution)
            {
                unsolved.Add(
                    FormattableString.Invariant(
                        $"list {number}: {list.RealStars} of {list.Detections.Count} real, {answer.Refusal}"
                    )
                );
                return;
            }

            Solved++;
            LargestChance = Math.Max(LargestChance, solution.FalseMatchProbability);
            var off = solution.Centre.SeparationTo(list.Centre) / list.Scale;
            var turn = Math.Abs(
                solution.Angle.TurnTo(PositionAngle.FromDegrees(list.UpDegrees)).Degrees
            );
            if (
                list.RealStars == 0
                || off > 20.0
                || turn > 1.0
                || Math.Abs((solution.Scale / list.Scale) - 1.0) > 0.01
                || solution.IsMirrored != list.Mirrored
            )
            {
                wrong.Add(FormattableString.Invariant($"list {number} is wrong by {off:0} px"));
                return;
            }

            var precision = solution.Fit.Precision;
            Centred += off <= 1.0 ? 1 : 0;
            Turned += turn <= Math.Max(0.01, 4.0 * precision.Angle.Degrees) ? 1 : 0;
            centrePulls += Math.Pow(off * list.Scale.Radians / precision.Centre.Radians, 2.0);
            anglePulls += Math.Pow(turn / precision.Angle.Degrees, 2.0);
        }
    }
}
