using Framing.Sky;

namespace Framing.Imaging;

/// <summary>One search for stars, from the plane to the result.</summary>
internal sealed class StarSearch
{
    private const int LeastStars = 6;
    private const int Trials = 400;

    private readonly StarPlane plane;
    private readonly BackgroundMesh mesh;
    private readonly StarFinderSettings settings;
    private readonly CancellationToken cancel;
    private double saturation = double.PositiveInfinity;

    public StarSearch(StarPlane plane, StarFinderSettings settings, CancellationToken cancel)
    {
        this.plane = plane;
        this.settings = settings;
        this.cancel = cancel;
        mesh = BackgroundMesh.Of(
            plane.Samples,
            plane.Width,
            plane.Height,
            plane.Step,
            plane.Dead,
            plane.Most,
            plane.HasColourFilter ? 3 : 1
        );
    }

    public FoundStars Run(int reduction)
    {
        if (float.IsNaN(mesh.Level))
        {
            return Result([], StarVerdict.Even, null, reduction, 0, 0);
        }

        // Most cameras stop a little short of their format's last number.
        saturation =
            plane.Greatest >= 0.9f * plane.Most ? 0.97 * plane.Greatest : double.PositiveInfinity;
        var peaks = Peaks(1);
        var typical = Typical(peaks, 1);
        var size = 1;
        while (
            size < 8
            && (typical is not { } found || found.Width / size > 5.5)
            && Math.Min(plane.Width, plane.Height) >= 64 * size
        )
        {
            size *= 2;
            var wider = Peaks(size);
            if (Typical(wider, size) is { } wide && (typical is null || wide.Width > 2.0 * size))
            {
                (peaks, typical) = (wider, wide);
            }
            else if (typical is not null)
            {
                break;
            }
        }

        if (typical is not { } shape)
        {
            shape = new(3.0, 1.2, 2.0, 0);
            peaks = Peaks(1);
        }

        var stars = Stars(peaks, shape, out var hot, out var lines);
        return Result(stars, Verdict(CountApart(stars), typical), typical, reduction, hot, lines);
    }

    private StarVerdict Verdict(int stars, TypicalStar? typical)
    {
        if (mesh.OverexposedShare > 0.5)
        {
            return StarVerdict.Overexposed;
        }

        if (mesh.Structure > 2.5)
        {
            return StarVerdict.Daylight;
        }

        if (typical is { Width: > 14.0, Count: >= LeastStars })
        {
            return StarVerdict.Defocused;
        }

        return stars >= LeastStars ? StarVerdict.Stars
            : stars < 3 ? StarVerdict.Even
            : StarVerdict.TooFewStars;
    }

    /// <summary>Stars, those that crowd together counted once: a grain of dust on a flat must not make a sky.</summary>
    private int CountApart(List<FoundStar> stars)
    {
        var apart = Apart(1);
        var places = new NeighbourGrid(apart);
        var count = 0;
        foreach (var star in stars)
        {
            if (!places.HoldsWithin(star.Position.X, star.Position.Y))
            {
                places.Add(star.Position.X, star.Position.Y, apart);
                if (++count >= 10 * LeastStars)
                {
                    break;
                }
            }
        }

        return count;
    }

    private double Apart(int size) =>
        Math.Clamp(0.04 * Math.Min(plane.Width, plane.Height), 4.0, 40.0 * size);

    /// <summary>The peaks of the plane at a part of its size, strongest first, in pixels of full size.</summary>
    private List<StarPeak> Peaks(int size)
    {
        List<StarPeak> peaks;
        if (size == 1)
        {
            peaks = PeakSearch.Find(
                plane.Samples,
                plane.Width,
                plane.Height,
                mesh,
                settings.Threshold,
                plane.HasColourFilter,
                cancel
            );
        }
        else
        {
            var small = new Picture(plane.Width, plane.Height, plane.Samples).Reduced(size);
            var samples = small.Samples(0);
            var under = BackgroundMesh.Of(samples, small.Width, small.Height, 0f, plane.Dead);
            peaks = PeakSearch
                .Find(samples, small.Width, small.Height, under, settings.Threshold, false, cancel)
                .ConvertAll(peak => new StarPeak(
                    (peak.X * size) + (size / 2),
                    (peak.Y * size) + (size / 2),
                    peak.Excess
                ));
        }

        peaks.Sort(
            (a, b) =>
                a.Excess != b.Excess ? b.Excess.CompareTo(a.Excess)
                : a.Y != b.Y ? a.Y.CompareTo(b.Y)
                : a.X.CompareTo(b.X)
        );
        return peaks;
    }

    /// <summary>What the stars of the frame look like, from the strongest peaks; null when there are too few of them.</summary>
    private TypicalStar? Typical(List<StarPeak> peaks, int size)
    {
        var measure = new StarMeasure(plane, mesh);
        var (widths, elongations, surrounds) = (
            new List<double>(),
            new List<double>(),
            new List<double>()
        );
        // Spread over the frame: a satellite's line has hundreds of peaks, and must not outvote the stars.
        var apart = Apart(size);
        var tried = new NeighbourGrid(apart);
        var trials = 0;
        foreach (var peak in peaks)
        {
            cancel.ThrowIfCancellationRequested();
            if (tried.HoldsWithin(peak.X, peak.Y))
            {
                continue;
            }

            tried.Add(peak.X, peak.Y, apart);
            if (++trials > Trials)
            {
                break;
            }

            var surround = measure.Surround(peak.X, peak.Y);
            if (
                (size == 1 && surround < 0.5)
                || !measure.TryMeasure(peak.X, peak.Y, 1.3 * size, settle: true, out var shape)
                || shape.SignalToNoise < 8.0
                || shape.Sigma > 2.0 * shape.Window
                || shape.Peak + shape.Background >= saturation
            )
            {
                continue;
            }

            widths.Add(shape.Width);
            elongations.Add(shape.Elongation);
            surrounds.Add(surround);
        }

        return widths.Count >= 5
            ? new(Usual(widths), Usual(elongations), Usual(surrounds), widths.Count)
            : null;
    }

    /// <summary>A little below the median: what is no star is wide and long.</summary>
    private static double Usual(List<double> values)
    {
        values.Sort();
        return values[values.Count * 2 / 5];
    }

    private List<FoundStar> Stars(
        List<StarPeak> peaks,
        TypicalStar typical,
        out int hot,
        out int lines
    )
    {
        var most = (int)Math.Min(peaks.Count, (2L * settings.MostStars) + 500);
        var measured = new StarShape?[most];
        var sharp = new bool[most];
        var window = Math.Max(typical.Width / StarShape.WidthOverSigma, 0.7);
        var leastSurround =
            typical.Width < 8.0 ? Math.Max(0.4, 0.3 * Math.Min(typical.Surround, 8.0)) : 0.4;
        const int chunk = 64;
        Parallel.For(
            0,
            (most + chunk - 1) / chunk,
            new ParallelOptions { CancellationToken = cancel },
            () => new StarMeasure(plane, mesh),
            (part, _, measure) =>
            {
                for (var i = part * chunk; i < Math.Min(most, (part + 1) * chunk); i++)
                {
                    sharp[i] = measure.Surround(peaks[i].X, peaks[i].Y) < leastSurround;
                    measured[i] = sharp[i] ? null : Measure(measure, peaks[i], window, typical);
                }

                return measure;
            },
            _ => { }
        );
        hot = sharp.Count(isSharp => isSharp);
        var shapes = new List<StarShape>(most);
        foreach (var shape in measured)
        {
            if (shape is { } one)
            {
                shapes.Add(one);
            }
        }

        var onLine = TrailLines.Find(shapes, typical.Elongation, typical.Width, out lines);
        return Select(shapes, onLine, typical);
    }

    private StarShape? Measure(
        StarMeasure measure,
        StarPeak peak,
        double window,
        TypicalStar typical
    )
    {
        // A saturated star is wider than others: its window has to grow.
        var saturated =
            plane.Raw[(peak.Y * plane.Width) + peak.X] >= saturation
            || plane.Samples[(peak.Y * plane.Width) + peak.X] >= saturation;
        if (!measure.TryMeasure(peak.X, peak.Y, window, saturated, out var shape))
        {
            return null;
        }

        if (shape.SignalToNoise < settings.Threshold)
        {
            return null;
        }

        saturated |= shape.Peak + shape.Background >= saturation;
        return shape with { Light = FluxOf(measure, shape, typical, saturated) };
    }

    /// <summary>The light within 1.5 widths of the frame's stars, or of the star itself where it is wider.</summary>
    private static double FluxOf(
        StarMeasure measure,
        in StarShape shape,
        TypicalStar typical,
        bool saturated
    ) =>
        measure.Flux(
            shape,
            1.5 * typical.Width * (saturated ? Math.Max(1.0, shape.Width / typical.Width) : 1.0)
        );

    private List<FoundStar> Select(List<StarShape> shapes, bool[] onLine, TypicalStar typical)
    {
        var order = Enumerable
            .Range(0, shapes.Count)
            .Where(i => !onLine[i] && shapes[i].Light > 0.0)
            .OrderByDescending(i => shapes[i].Light)
            .ThenBy(i => shapes[i].Y)
            .ThenBy(i => shapes[i].X)
            .ToList();
        var taken = new NeighbourGrid(Math.Max(4.0, 2.0 * typical.Width));
        var near = new NeighbourGrid(Math.Max(4.0, 2.0 * typical.Width));
        foreach (var i in order)
        {
            near.Add(shapes[i].X, shapes[i].Y, 2.5 * typical.Width, i);
        }

        var stars = new List<FoundStar>(order.Count);
        foreach (var i in order)
        {
            var shape = shapes[i];
            var saturated = shape.Peak + shape.Background >= saturation;
            if (
                taken.HoldsWithin(shape.X, shape.Y)
                || !(saturated || HasStarShape(shape, typical) || IsCrowded(shape, i))
            )
            {
                continue;
            }

            taken.Add(
                shape.X,
                shape.Y,
                saturated
                    ? Math.Max(shape.Width, 0.8 * typical.Width)
                    : 0.7 * typical.Width * Math.Sqrt(typical.Elongation)
            );
            stars.Add(StarOf(shape, saturated));
            if (stars.Count == settings.MostStars)
            {
                break;
            }
        }

        return MarkBlends(stars, typical.Width);

        // Two stars side by side look long and wide, each under the other's light.
        bool IsCrowded(in StarShape shape, int self)
        {
            var light = shape.Light;
            return shape.Width < 4.0 * typical.Width
                && near.Around(shape.X, shape.Y, self)
                    .Exists(other =>
                        shapes[other].Light > 0.3 * light && shapes[other].Light < 30.0 * light
                    );
        }
    }

    /// <summary>Neither much wider or narrower nor longer than the frame's stars: shapes of faint ones are rough.</summary>
    private static bool HasStarShape(in StarShape shape, TypicalStar typical) =>
        shape.Width > 0.4 * typical.Width
        && shape.Width < (shape.SignalToNoise < 12.0 ? 2.4 : 2.0) * typical.Width
        && (
            shape.SignalToNoise < 12.0 || shape.Elongation < Math.Max(2.2, 1.8 * typical.Elongation)
        );

    private static FoundStar StarOf(in StarShape shape, bool saturated)
    {
        // Of a bell against an even background: sqrt(2) sigma over the signal-to-noise ratio.
        var noise = Math.Sqrt(2.0) * shape.Sigma / shape.SignalToNoise;
        var other = saturated ? 0.1 : 0.02;
        return new(new PixelPosition(shape.X + 1.0, shape.Y + 1.0), shape.Light)
        {
            SignalToNoise = shape.SignalToNoise,
            Peak = shape.Peak,
            WidthPx = shape.Width,
            Elongation = shape.Elongation,
            ElongationDirection = Angle.FromRadians(shape.Direction),
            PositionErrorPx = double.Hypot(noise, other),
            IsSaturated = saturated,
        };
    }

    private static List<FoundStar> MarkBlends(List<FoundStar> stars, double width)
    {
        var reach = 2.0 * width;
        var grid = new Dictionary<(int, int), List<int>>();
        for (var i = 0; i < stars.Count; i++)
        {
            var cell = Cell(stars[i]);
            (grid.TryGetValue(cell, out var list) ? list : grid[cell] = []).Add(i);
        }

        for (var i = 0; i < stars.Count; i++)
        {
            var (column, row) = Cell(stars[i]);
            for (var k = 0; k < 9 && !stars[i].IsBlended; k++)
            {
                if (
                    grid.TryGetValue((column + (k % 3) - 1, row + (k / 3) - 1), out var near)
                    && near.Exists(j => j != i && Disturbs(stars[j], stars[i]))
                )
                {
                    stars[i] = stars[i] with { IsBlended = true };
                }
            }
        }

        return stars;

        (int, int) Cell(FoundStar star) =>
            ((int)(star.Position.X / reach), (int)(star.Position.Y / reach));

        bool Disturbs(FoundStar other, FoundStar star) =>
            other.Flux > 0.1 * star.Flux
            && double.Hypot(other.Position.X - star.Position.X, other.Position.Y - star.Position.Y)
                < reach;
    }

    private FoundStars Result(
        List<FoundStar> stars,
        StarVerdict verdict,
        TypicalStar? typical,
        int reduction,
        int hot,
        int lines
    ) =>
        new()
        {
            Stars = reduction == 1 ? stars : stars.ConvertAll(star => Enlarged(star, reduction)),
            Verdict = verdict,
            WidthPx = plane.Width * reduction,
            HeightPx = plane.Height * reduction,
            Background = mesh.Level,
            Noise = mesh.Noise,
            TypicalWidthPx = typical?.Width * reduction,
            TypicalElongation = typical?.Elongation,
            HotPixels = hot,
            Trails = lines,
            HasColourFilter = plane.HasColourFilter,
        };

    /// <summary>In pixels of the file, where the picture was averaged down when it was read.</summary>
    private static FoundStar Enlarged(in FoundStar star, int factor) =>
        star with
        {
            Position = new(
                ((star.Position.X - 0.5) * factor) + 0.5,
                ((star.Position.Y - 0.5) * factor) + 0.5
            ),
            Flux = star.Flux * factor * factor,
            WidthPx = star.WidthPx * factor,
            PositionErrorPx = star.PositionErrorPx * factor,
        };
}
