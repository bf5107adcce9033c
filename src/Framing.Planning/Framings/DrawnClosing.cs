using Framing.Mosaics;

namespace Framing.Planning;

/// <summary>Draws a mosaic many times with the errors of a request.</summary>
internal static class DrawnClosing
{
    /// <summary>The seed of the odds that a plan reports.</summary>
    public const ulong ReportSeed = 1;

    /// <summary>Panels drawn over all trials beyond which fewer mosaics are drawn: that takes some tenths of a second.</summary>
    private const int MostDraws = 1_000_000;

    private const int FewestTrials = 1_000;

    /// <summary>The odds that a plan reports: of 20,000 mosaics, fewer where one has more than 50 panels.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="mosaic">The mosaic as planned.</param>
    /// <param name="part">The part of those mosaics that is drawn, where only a yes or no hangs on it.</param>
    public static ClosingOdds Odds(FramingRequest request, Mosaic mosaic, double part = 1.0) =>
        ClosingTrials.Of(
            mosaic,
            Own(request),
            request.Target.Outline,
            Settings(
                request,
                Math.Max(
                    FewestTrials,
                    (int)(
                        part * Math.Min(MostDraws / mosaic.Panels.Count, new TrialSettings().Trials)
                    )
                ),
                ReportSeed
            )
        );

    /// <summary>The part of the errors that each panel has for itself.</summary>
    public static PanelErrors Own(FramingRequest request)
    {
        var part = Math.Sqrt(1.0 - request.SharedErrorPart);
        return request.Errors with
        {
            PointingSigma = request.Errors.PointingSigma * part,
            CameraAngleSigma = request.Errors.CameraAngleSigma * part,
        };
    }

    /// <summary>How a mosaic of a request is drawn, with the part of the errors that all panels share.</summary>
    public static TrialSettings Settings(FramingRequest request, int trials, ulong seed)
    {
        var part = Math.Sqrt(request.SharedErrorPart);
        return new()
        {
            Trials = trials,
            Seed = seed,
            SharedPointingSigma = request.Errors.PointingSigma * part,
            SharedAngleSigma = request.Errors.CameraAngleSigma * part,
        };
    }
}
