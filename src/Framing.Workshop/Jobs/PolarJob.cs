using System.Globalization;
using Framing.Imaging;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Finds the error of the polar axis from frames between which the mount turned in right ascension alone.</summary>
public static class PolarJob
{
    /// <summary>Frames further apart in time are of different setups.</summary>
    private static readonly TimeSpan LongestEvening = TimeSpan.FromHours(16.0);

    /// <summary>Does the job.</summary>
    /// <param name="order">What is wanted.</param>
    /// <returns>Where the axis points, or why that cannot be told.</returns>
    /// <exception cref="InputException">The site, the plan or a frame cannot be used.</exception>
    public static PolarDelivery Run(PolarOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var plan = order.PlanPath is { } path ? PlanFileReader.Read(path) : null;
        var site = order.SitePath is { } named
            ? PlanFileReader.ReadSite(named)
            : plan?.Site
                ?? throw new InputException(
                    plan is null
                        ? "where does the mount stand? Give --plan PLAN, or --site FILE with latitude_deg and longitude_deg"
                        : $"{order.PlanPath}: the plan has no [site]; give one, or --site FILE with latitude_deg and longitude_deg"
                );
        var frames = new List<AxisFrame>();
        foreach (var name in order.Frames)
        {
            var facts = PictureFile.Inspect(Path.GetFullPath(name, order.WorkingFolder));
            if ((facts.Rig.Middle ?? facts.Rig.Start)?.UtcDateTime is not { } at)
            {
                throw new InputException(
                    $"{name}: the frame does not say when it was taken (DATE-OBS); the axis cannot be told without"
                );
            }

            var whole = Path.GetFullPath(name, order.WorkingFolder);
            var sky =
                SkyFinder.Find(whole, facts, ScaleOf(facts, plan?.Rig), null, out var reason)
                ?? throw new InputException($"{name}: {reason}");
            frames.Add(
                new(
                    new(sky.Facts.Centre, sky.Facts.DisplayedPositionAngle),
                    at,
                    sky.CentreSigma,
                    sky.TurnSigma
                )
            );
        }

        if (frames.Max(frame => frame.Utc) - frames.Min(frame => frame.Utc) > LongestEvening)
        {
            throw new InputException(
                "the frames were not taken on one evening; take them one after the other"
            );
        }

        var messages = new List<string>();
        var result = PolarAxis.Find(site.Observer, frames);
        if (result.Finding is { } finding && order.PlanPath is { } learning)
        {
            var error = finding.Error.Arcminutes.ToString("0.0", CultureInfo.InvariantCulture);
            var file = PlanEditor.Set(learning, "mount", [("polar_error_arcmin", error)]);
            messages.Add(
                $"Learned: polar_error_arcmin = {error} (kept in {file}); plans reckon with it until the mount is aligned again."
            );
        }

        return new(result, site.Observer, messages);
    }

    /// <summary>Sky per pixel: by the header's lens and pixels, else by the plan's.</summary>
    private static Angle? ScaleOf(PictureFacts facts, Rig? rig) =>
        facts.Rig is { PixelMicrometres: { } pixel, FocalLengthMillimetres: { } focal }
            ? Angle.FromRadians(pixel / (1000.0 * focal))
        : rig is not null && facts.Width > 0
            ? Angle.FromRadians(
                rig.Sensor.PixelMicrometres
                    * Math.Max(1.0, Math.Round((double)rig.Sensor.WidthPx / facts.Width))
                    / (1000.0 * rig.FocalLengthMillimetres)
            )
        : null;
}
