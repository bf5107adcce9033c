using Framing.Drawing;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The sky under a plan on the desk: a chart without panels, over which a page draws them itself.</summary>
public sealed class DeskSky
{
    private readonly SkyScene scene;

    private DeskSky(SkyScene scene, PictureSize size)
    {
        this.scene = scene;
        Size = size;
        Chart = SkyPicture.ChartOf(scene, size);
    }

    /// <summary>The size of the picture in pixels.</summary>
    public PictureSize Size { get; }

    /// <summary>Where the chart stands in the picture, and which direction each of its pixels shows.</summary>
    public ChartGeometry Chart { get; }

    /// <summary>Makes the sky under a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="size">The size of the picture.</param>
    /// <returns>The sky: the same plan and size show the same part of it.</returns>
    public static DeskSky Of(DeskPlan plan, PictureSize size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var year = TerrestrialTime.FromUtc(plan.Plan.Request.At).JulianYear;
        var whole = SceneMaker.Of(plan.Plan, size, year, backdrop: null, MadeUpParts.None);
        return new(
            whole with
            {
                Title = string.Empty,
                Summary = string.Empty,
                HasLegend = false,
                Panels = [],
                FallsShort = [],
                ThinOverlaps = [],
            },
            size
        );
    }

    /// <summary>Draws the picture.</summary>
    /// <param name="palette">Its colours.</param>
    /// <returns>The bytes of a PNG file.</returns>
    public byte[] ToPng(PicturePalette palette) => SkyPicture.Compose(scene, Size, palette).ToPng();
}
