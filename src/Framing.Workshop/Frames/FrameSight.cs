using Framing.Imaging;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Reads a frame for a check: where it looks, when, and through which lens.</summary>
internal static class FrameSight
{
    /// <summary>Parts of the plan's columns and rows: a frame of less is a cut-out of the sensor.</summary>
    private const double LeastOfSensor = 0.97;

    /// <summary>Reads a frame.</summary>
    /// <param name="file">The file as it was named.</param>
    /// <param name="path">Its whole path.</param>
    /// <param name="rig">The plan's rig.</param>
    /// <param name="otherwise">The time to take where the file names none.</param>
    /// <param name="near">Where it ought to look; null when not known.</param>
    /// <exception cref="Fits.UnreadableFileException">It cannot be read, or it is no picture.</exception>
    public static SightedFrame Read(
        string file,
        string path,
        Rig rig,
        DateTime otherwise,
        SkyDirection? near
    )
    {
        var facts = PictureFile.Inspect(path);
        var notes = new List<string>();
        var time = (facts.Rig.Middle ?? facts.Rig.Start)?.UtcDateTime;
        var binning = BinningOf(facts, rig);
        if (
            SkyFinder.Find(path, facts, ScaleOf(facts, rig), near, out var reason)
            is not { Facts: var sky }
        )
        {
            return new(file, facts, null, reason, time is not null, null, null, notes);
        }

        var (scaleX, scaleY) = (sky.ScaleX, sky.ScaleY);
        var scale = Angle.FromRadians(Math.Sqrt(scaleX.Radians * scaleY.Radians));
        var focalLength = Rig.FocalLengthFromScale(scale, rig.Sensor.PixelMicrometres * binning);
        if (time is null)
        {
            notes.Add(
                FormattableString.Invariant(
                    $"The frame does not say when it was taken; it is taken for {otherwise:yyyy-MM-dd HH:mm} UTC, and nothing is learned from it."
                )
            );
        }

        if (
            facts.Width * binning < rig.Sensor.WidthPx * LeastOfSensor
            || facts.Height * binning < rig.Sensor.HeightPx * LeastOfSensor
        )
        {
            notes.Add(
                FormattableString.Invariant(
                    $"The frame has {facts.Width} x {facts.Height} pixels{(binning > 1 ? FormattableString.Invariant($" of {binning} x {binning}") : string.Empty)}, less than the plan's sensor: what is checked is the middle of this cut-out."
                )
            );
        }

        if (facts.RowsTopDown)
        {
            notes.Add(
                "The file's rows run top-down (ROWORDER): the angle is that of the picture as it is displayed."
            );
        }

        return new(
            file,
            facts,
            new(
                new(sky.Centre, sky.DisplayedPositionAngle),
                new(facts.Width * scaleX.Radians, facts.Height * scaleY.Radians),
                sky.DisplayedMirrored,
                time ?? otherwise
            ),
            null,
            time is not null,
            focalLength,
            scale,
            notes
        );
    }

    /// <summary>The sky that a pixel of a frame spans with the plan's rig.</summary>
    public static Angle ScaleOf(PictureFacts facts, Rig rig) =>
        Angle.FromRadians(
            rig.Sensor.PixelMicrometres
                * BinningOf(facts, rig)
                / (1000.0 * rig.FocalLengthMillimetres)
        );

    /// <summary>Pixels joined along each axis: as the header has it, else as the frame's size has it.</summary>
    private static int BinningOf(PictureFacts facts, Rig rig)
    {
        if (facts.Rig.Binning is { } written)
        {
            return written;
        }

        for (var binning = 1; binning <= 16; binning++)
        {
            if (
                facts.Width == rig.Sensor.WidthPx / binning
                && facts.Height == rig.Sensor.HeightPx / binning
            )
            {
                return binning;
            }
        }

        return 1;
    }
}
