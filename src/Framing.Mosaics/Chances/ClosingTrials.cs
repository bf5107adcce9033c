using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Draws a whole mosaic many times with its errors and counts how often it closes and covers its target.</summary>
/// <remarks>
/// <para>
/// Each panel is moved by a normal error on each axis of the camera and turned by a normal error, independent of the
/// others; errors that all share may be added. The panels are the planned ones, with all that the sphere and a camera left
/// alone do to them. Every trial is looked at exactly: facing sides as <see cref="CoverageMeasure"/> looks at them, holes
/// where four panels meet by what the four leave bare between their middles.
/// </para>
/// <para>
/// Dithering and drift are taken off the panels: the widest step of dithering and half of the drift on every side. What
/// counts is then the sky that every sub of a panel holds, and neighbours lose just what <see cref="GapChance"/> takes off.
/// </para>
/// <para>
/// The methods that a trial calls are compiled in full at once: a plan takes a second, too short for the run-time compiler
/// to find out which of them matter (0.6 s of it went there before).
/// </para>
/// <para>The same mosaic, errors and seed give the same answer, on however many threads.</para>
/// </remarks>
public static class ClosingTrials
{
    /// <summary>Trials that are drawn together; also the order of sums, so that it does not hang on threads.</summary>
    private const int BlockSize = 250;

    /// <summary>Draws a mosaic many times.</summary>
    /// <param name="mosaic">The mosaic as planned.</param>
    /// <param name="errors">How far from its plan a panel is likely to be shot.</param>
    /// <param name="target">What is to be covered; null when that is not asked.</param>
    /// <param name="settings">How many trials, from which seed, and what all panels share; null takes 20,000 and nothing shared.</param>
    /// <returns>How often it closed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An error is negative or there is no trial.</exception>
    public static ClosingOdds Of(
        Mosaic mosaic,
        PanelErrors errors,
        SkyOutline? target = null,
        TrialSettings? settings = null
    )
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        settings ??= new();
        Check(errors, settings);
        var planned = Planned(mosaic, errors);
        var meetings = new PanelMeetings(mosaic);
        var pairs = meetings.Pairs;
        var rim = target is null
            ? null
            : new TargetRim(target, planned, Stray(planned, errors, settings));
        var blocks = new (int Closed, int Covered, double Area)[
            (settings.Trials + BlockSize - 1) / BlockSize
        ];
        var parted = new long[pairs.Length];
        Parallel.For(
            0,
            blocks.Length,
            new ParallelOptions { MaxDegreeOfParallelism = settings.MostThreads },
            () => new Bench(planned, meetings, rim),
            (block, _, bench) =>
            {
                var first = block * BlockSize;
                var last = Math.Min(settings.Trials, first + BlockSize);
                for (var trial = first; trial < last; trial++)
                {
                    Draw(planned, bench.Panels, errors, settings, trial);
                    var (closed, area, covered) = bench.Trial.Look();
                    blocks[block].Closed += closed ? 1 : 0;
                    blocks[block].Covered += covered ? 1 : 0;
                    blocks[block].Area += area;
                }

                return bench;
            },
            bench =>
            {
                lock (parted)
                {
                    for (var i = 0; i < parted.Length; i++)
                    {
                        parted[i] += bench.Trial.Parted[i];
                    }
                }
            }
        );

        double trials = settings.Trials;
        var most = parted.Length == 0 ? 0L : parted.Max();
        var weakest = most == 0L ? default : pairs[Array.IndexOf(parted, most)];
        return new()
        {
            Trials = settings.Trials,
            ChanceNoGap = blocks.Sum(block => block.Closed) / trials,
            ChanceTargetCovered = rim is null ? null : blocks.Sum(block => block.Covered) / trials,
            ExpectedGapArea = SolidAngle.FromSteradians(blocks.Sum(block => block.Area) / trials),
            WeakestPair =
                most == 0L ? null : new(weakest.First + 1, weakest.Second + 1, most / trials),
        };
    }

    /// <summary>Finds out of those trials that are not decided whether the mosaic closes: a quick look, without areas.</summary>
    /// <param name="mosaic">The mosaic as planned.</param>
    /// <param name="errors">How far from its plan a panel is likely to be shot.</param>
    /// <param name="settings">From which seed, and what all panels share.</param>
    /// <param name="closes">One place a trial; those that are null are filled.</param>
    internal static void Decide(
        Mosaic mosaic,
        PanelErrors errors,
        TrialSettings settings,
        Memory<bool?> closes
    )
    {
        Check(errors, settings);
        var planned = Planned(mosaic, errors);
        var meetings = new PanelMeetings(mosaic);
        List<int> open = [];
        for (var trial = 0; trial < closes.Length; trial++)
        {
            if (closes.Span[trial] is null)
            {
                open.Add(trial);
            }
        }

        Parallel.For(
            0,
            (open.Count + BlockSize - 1) / BlockSize,
            new ParallelOptions { MaxDegreeOfParallelism = settings.MostThreads },
            () => new Bench(planned, meetings, null),
            (block, _, bench) =>
            {
                var last = Math.Min(open.Count, (block + 1) * BlockSize);
                for (var i = block * BlockSize; i < last; i++)
                {
                    var trial = open[i];
                    Draw(planned, bench.Panels, errors, settings, trial);
                    closes.Span[trial] = bench.Trial.Closes();
                }

                return bench;
            },
            _ => { }
        );
    }

    private static DrawnPanels Planned(Mosaic mosaic, PanelErrors errors)
    {
        // A panel that dithering and drift eat up keeps a millionth, so that everything stays a figure.
        var lost = Math.Tan(Math.Min(1.5, errors.Dither.Radians + (errors.Drift.Radians / 2.0)));
        var planned = new DrawnPanels(
            mosaic.Panels.Count,
            Left(mosaic.Field.TangentWidth),
            Left(mosaic.Field.TangentHeight)
        );
        for (var i = 0; i < mosaic.Panels.Count; i++)
        {
            planned.Axes[i] = CameraAxes.Of(mosaic.Panels[i].Pose, mosaic.Mirrored);
        }

        return planned;

        double Left(double size) => Math.Max((size / 2.0) - lost, size * 1e-6);
    }

    /// <summary>Ten standard deviations of everything that moves a corner.</summary>
    private static double Stray(DrawnPanels planned, PanelErrors errors, TrialSettings settings) =>
        10.0
        * (
            errors.PointingSigma.Radians
            + settings.SharedPointingSigma.Radians
            + (
                (errors.CameraAngleSigma.Radians + settings.SharedAngleSigma.Radians)
                * double.Hypot(planned.HalfWidth, planned.HalfHeight)
            )
        );

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Draw(
        DrawnPanels planned,
        DrawnPanels drawn,
        PanelErrors errors,
        TrialSettings settings,
        int trial
    )
    {
        var draws = new SeededDraws(settings.Seed, (ulong)trial);
        var (sigma, turn) = (errors.PointingSigma.Radians, errors.CameraAngleSigma.Radians);
        var sharedRight = settings.SharedPointingSigma.Radians * draws.Normal();
        var sharedUp = settings.SharedPointingSigma.Radians * draws.Normal();
        var sharedTurn = settings.SharedAngleSigma.Radians * draws.Normal();
        for (var i = 0; i < planned.Axes.Length; i++)
        {
            drawn.Axes[i] = planned[i]
                .Moved(
                    sharedRight + (sigma * draws.Normal()),
                    sharedUp + (sigma * draws.Normal()),
                    sharedTurn + (turn * draws.Normal())
                );
        }
    }

    private static void Check(PanelErrors errors, TrialSettings settings)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.Trials, 1, nameof(settings));
        if (
            errors.PointingSigma < Angle.Zero
            || errors.CameraAngleSigma < Angle.Zero
            || errors.Dither < Angle.Zero
            || errors.Drift < Angle.Zero
            || settings.SharedPointingSigma < Angle.Zero
            || settings.SharedAngleSigma < Angle.Zero
        )
        {
            throw new ArgumentOutOfRangeException(
                nameof(errors),
                errors,
                "Standard deviations, dithering and drift are 0 or more."
            );
        }
    }

    /// <summary>What one thread works with.</summary>
    private sealed class Bench
    {
        public Bench(DrawnPanels planned, PanelMeetings meetings, TargetRim? rim)
        {
            Panels = new(planned.Axes.Length, planned.HalfWidth, planned.HalfHeight);
            Trial = new(Panels, meetings, rim);
        }

        public DrawnPanels Panels { get; }

        public MosaicTrial Trial { get; }
    }
}
