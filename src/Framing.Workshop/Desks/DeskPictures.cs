using Framing.Drawing;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The pictures of a plan on the desk, as <c>framing plan</c> draws them.</summary>
public static class DeskPictures
{
    /// <summary>The sky with the panels.</summary>
    /// <param name="plan">The plan.</param>
    /// <returns>The picture, 1600 x 1000 in the colours of the day.</returns>
    public static SkyPicture Sky(DeskPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return SkyPicture.Compose(
            SceneMaker.Of(
                plan.Plan,
                PictureSize.Default,
                TerrestrialTime.FromUtc(plan.Plan.Request.At).JulianYear,
                backdrop: null,
                MadeUpParts.None
            )
        );
    }

    /// <summary>The band of the nights.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="palette">Its colours.</param>
    /// <returns>The picture; null where the plan names no site.</returns>
    public static NightPicture? Nights(DeskPlan plan, PicturePalette palette = PicturePalette.Day)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Nights is { } nights
            ? NightPicture.Compose(nights, plan.File.Title, PictureSize.Default, palette)
            : null;
    }
}
