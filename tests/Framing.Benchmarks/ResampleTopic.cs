using System.Globalization;
using System.Runtime.InteropServices;
using Framing.Fits;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>
/// A made frame through a real lens's distortion onto a canvas of 3840 x 2160, bilinear, one thread, decoding left out: beside a
/// plain C loop that knows the two maps, and reproject_interp. Then pictures of 1 to 400 million pixels over the same canvas.
/// </summary>
internal static class ResampleTopic
{
    private const int Columns = 3840;
    private const int Rows = 2160;
    private const int Runs = 7;
    private const int Rounds = 3;

    public static int Run(string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("resample-").FullName;
        try
        {
            if (arguments is not ["sizes"])
            {
                Beside(folder, withInterp: arguments is not ["limit"]);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        if (arguments is not ["limit"])
        {
            foreach (var megapixels in new[] { 1, 4, 26, 100, 400 })
            {
                OfSize(megapixels);
            }
        }

        return 0;
    }

    private static void Beside(string folder, bool withInterp)
    {
        var samples = LightFrame.Samples();
        var (frame, canvas) = (
            Path.Combine(folder, "light.fits"),
            Path.Combine(folder, "canvas.fits")
        );
        LightFrame.Write(frame, samples, HeaderCards.Distorted);
        string[] empty =
        [
            "SIMPLE  =                    T",
            "BITPIX  =                    8",
            "NAXIS   =                    0",
        ];
        File.WriteAllBytes(canvas, LightFrame.Header([.. empty, .. HeaderCards.Canvas]));
        var picture = new Picture(
            LightFrame.Width,
            LightFrame.Height,
            Array.ConvertAll(samples, sample => (float)sample)
        )
        {
            Coordinates = WorldCoordinatesReader.Read(HeaderFile.Read(frame)).AsWritten,
        };
        var chart = WorldCoordinatesReader.Read(HeaderFile.Read(canvas)).AsWritten!;
        var (raw, answer) = (Path.Combine(folder, "frame.raw"), Path.Combine(folder, "drawn.raw"));
        File.WriteAllBytes(raw, MemoryMarshal.AsBytes(picture.Plane(0)).ToArray());

        var (medians, leasts) = (new List<double>(), new List<double>());
        var (limits, leastLimits) = (new List<double>(), new List<double>());
        ResampledPicture? drawn = null;
        foreach (var kind in Enum.GetValues<Interpolation>())
        {
            Stopwatches.Time(
                FormattableString.Invariant($"ours, {kind}"),
                Runs,
                () => Resampler.Resample(picture, chart, Columns, Rows, kind, threads: 1)
            );
        }

        for (var round = 0; round < Rounds; round++)
        {
            var ours = Stopwatches.Times(
                "ours",
                Runs,
                () => Resampler.Resample(picture, chart, Columns, Rows, threads: 1)
            );
            (drawn, _) = (ours.Result, 0);
            medians.Add(ours.Median);
            leasts.Add(ours.Least);
            var limit = Rival.RunCompiled(
                "resample.c",
                folder,
                LightFrame.Width.ToString(CultureInfo.InvariantCulture),
                LightFrame.Height.ToString(CultureInfo.InvariantCulture),
                raw,
                Runs.ToString(CultureInfo.InvariantCulture),
                answer
            );
            limits.Add(limit["grid"]);
            leastLimits.Add(limit["grid least"]);
        }

        Difference(drawn!.Plane(0), MemoryMarshal.Cast<byte, float>(File.ReadAllBytes(answer)));
        var median = medians.Order().ElementAt(Rounds / 2);
        Stopwatches.Ratio(
            "C loop, map on a grid of 32 px",
            median,
            limits.Order().ElementAt(Rounds / 2)
        );
        Stopwatches.Ratio("  least times", leasts.Min(), leastLimits.Min());
        if (withInterp)
        {
            var rival = Rival.Run("reproject_interp.py", frame, canvas, "1");
            Stopwatches.Ratio("reproject_interp", median, rival["whole"]);
            Stopwatches.Ratio("  least times", leasts.Min(), rival["whole least"]);
        }
    }

    private static void Difference(ReadOnlySpan<float> ours, ReadOnlySpan<float> theirs)
    {
        var (largest, squares, count, one) = (0.0, 0.0, 0, 0);
        for (var i = 0; i < ours.Length; i++)
        {
            if (float.IsNaN(ours[i]) != float.IsNaN(theirs[i]))
            {
                one++;
            }
            else if (!float.IsNaN(ours[i]))
            {
                var off = Math.Abs(ours[i] - theirs[i]);
                largest = Math.Max(largest, off);
                squares += (double)off * off;
                count++;
            }
        }

        Console.WriteLine(
            FormattableString.Invariant(
                $"against the C loop at every pixel: rms {Math.Sqrt(squares / count):0.0000}, largest {largest:0.00} of 65535, over {count} pixels; {one} drawn by one alone (the outer half pixel)"
            )
        );
    }

    /// <summary>A picture that covers the canvas whole, turned, at a scale of its own.</summary>
    private static void OfSize(int megapixels)
    {
        var width = (int)Math.Sqrt(megapixels * 1e6 * 1.2);
        var height = (int)(width / 1.2);
        var samples = new float[width * height];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = i % 4099;
        }

        var centre = SkyDirection.FromDegrees(314.0, 44.0);
        var picture = new Picture(width, height, samples)
        {
            Coordinates = new TanWorldCoordinates(
                new((width + 1) / 2.0, (height + 1) / 2.0),
                centre,
                PixelMatrix.FromPositionAngle(
                    PositionAngle.FromDegrees(30.0),
                    Angle.FromDegrees(7.0 / width),
                    mirrored: false
                )
            ),
        };
        var chart = new TanWorldCoordinates(
            new((Columns + 1) / 2.0, (Rows + 1) / 2.0),
            centre,
            PixelMatrix.FromPositionAngle(
                PositionAngle.North,
                Angle.FromArcseconds(5.0),
                mirrored: false
            )
        );

        // As a preview reads it: averaged down so far that a pixel is no smaller than half the canvas's.
        var factor = Math.Max(1, (int)(chart.Matrix.Scale / picture.Coordinates!.Matrix.Scale));
        var (averaging, preview) = Stopwatches.Time(
            FormattableString.Invariant($"{megapixels} Mpx, averaged down by {factor}"),
            1,
            () => picture.Reduced(factor)
        );
        var (drawing, _) = Stopwatches.Time(
            FormattableString.Invariant($"{megapixels} Mpx, drawn"),
            Runs,
            () => Resampler.Resample(preview, chart, Columns, Rows, threads: 1)
        );
        Console.WriteLine(
            FormattableString.Invariant(
                $"  {drawing * 1e6 / Columns / Rows:0.00} ns a pixel of the canvas; {averaging * 1e6 / width / height:0.00} ns a pixel of the picture for averaging (all threads)"
            )
        );
    }
}
