using Framing.Sky;

namespace Framing.Nights;

/// <summary>The honest sums of a rig: its scale against the seeing and against the guider's, and what its files fill.</summary>
/// <param name="Scale">The sky that one (binned) pixel spans.</param>
/// <param name="Seeing">Full width at half maximum of a star's disc.</param>
/// <param name="GuideScale">The sky that one guide pixel spans; null without a guider.</param>
/// <param name="FrameBytes">The size of one frame's file.</param>
/// <param name="Wanted">The subs to shoot for all panels, those that will be lost among them.</param>
/// <param name="InTheNight">The subs that a night has room for, or as many as are wanted; null where no night is known.</param>
public sealed record RigSums(
    Angle Scale,
    Angle Seeing,
    Angle? GuideScale,
    long FrameBytes,
    long Wanted,
    long? InTheNight
)
{
    /// <summary>A guider finds its star to a fifth of its pixel: common practice.</summary>
    private const double GuideShare = 0.2;

    private const int FitsBlock = 2880;

    // Far beyond any plan, and within what a time can hold.
    private const double MostHours = 1e6;

    /// <summary>How many pixels the seeing's disc spans: two to three are usual (common practice).</summary>
    public double PixelsPerSeeing => Seeing / Scale;

    /// <summary>How many image pixels a guide pixel spans; null without a guider.</summary>
    public double? GuideRatio => GuideScale / Scale;

    /// <summary>The error that guiding cannot see, a fifth of a guide pixel, in image pixels; null without a guider.</summary>
    public double? GuideErrorPx => GuideShare * GuideRatio;

    /// <summary>What the files of the night fill, bytes: of all wanted subs where no night is known.</summary>
    public double Bytes => (double)FrameBytes * (InTheNight ?? Wanted);

    internal static RigSums Of(EveningRequest request, TimeSpan? shooting)
    {
        var wanted = request.Subs.Sum(sub => request.Panels.Count * Each(request, sub));
        long? room = shooting is { } time
            ? Math.Min(wanted, (long)((wanted * (time.TotalHours / WishedHours(request))) + 1e-6))
            : null;
        return new(
            request.Rig.Scale,
            request.Seeing,
            request.GuideScale,
            Bytes16(request.Rig),
            wanted,
            room
        );
    }

    /// <summary>The clock's time for all that is wished for: subs, those that will be lost, dithers, changes of panel.</summary>
    internal static TimeSpan Wished(EveningRequest request) =>
        TimeSpan.FromHours(Math.Min(WishedHours(request), MostHours));

    private static double WishedHours(EveningRequest request)
    {
        var panels = request.Panels.Count;
        var shooting =
            request.Subs.Count == 0
                ? request.GoalPerPanel.TotalHours * panels / (1.0 - request.ExpectedLoss)
                : request.Subs.Sum(sub => sub.Cadence.TotalHours * panels * Each(request, sub));
        return shooting + (request.Repoint.TotalHours * (panels - 1));
    }

    /// <summary>The subs of a filter to shoot for one panel.</summary>
    private static long Each(EveningRequest request, SubWish sub)
    {
        var shares = request.Subs.Sum(other => other.Share);
        var exposure = request.GoalPerPanel * (sub.Share / shares);
        var good = Math.Ceiling((exposure / sub.Sub) - 1e-9);
        return (long)Math.Ceiling((good / (1.0 - request.ExpectedLoss)) - 1e-9);
    }

    /// <summary>A FITS file of 16-bit samples: two blocks of header, data in whole blocks.</summary>
    private static long Bytes16(Rig rig)
    {
        var data = 2L * rig.FrameWidthPx * rig.FrameHeightPx;
        return (2L * FitsBlock) + ((data + FitsBlock - 1) / FitsBlock * FitsBlock);
    }
}
