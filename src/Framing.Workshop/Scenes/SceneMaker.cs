using Framing.Catalogue;
using Framing.Drawing;
using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Makes the scene that shows a framing over the catalogue's stars and objects.</summary>
internal static class SceneMaker
{
    /// <summary>More stars than a picture of the default size shows; larger pictures get more in proportion.</summary>
    private const int MostStars = 8000;

    /// <summary>Names of stars fainter than this are no help in finding one's way.</summary>
    private const double FaintestNamed = 5.0;

    private const int MostObjects = 40;

    /// <summary>Farther from the middle of the mosaic than this nothing can be shown in one chart.</summary>
    private static readonly Angle FarthestShown = Angle.FromDegrees(50.0);

    public static SkyScene Of(
        FramedPlan plan,
        PictureSize size,
        double julianYear,
        IBackdrop? backdrop,
        MadeUpParts madeUp,
        params IReadOnlyList<ChartFrame> frames
    )
    {
        var target = plan.Request.Target;
        var shown = plan
            .Panels.SelectMany(panel => panel.Corners)
            .Concat(
                plan.Coverage is { TargetCoveredFraction: > 1e-6 } ? target.Outline.Corners : []
            )
            .Concat(frames.SelectMany(frame => frame.Corners))
            .Where(corner => corner.SeparationTo(plan.Pose.Centre) < FarthestShown)
            .ToList();
        var scene = new SkyScene
        {
            View = ChartView.Around(shown),
            Title = plan.Request.Title,
            Summary = SceneSummary(plan),
            Targets =
            [
                .. target.Parts.Select(part => new ChartObject(
                    part.Name,
                    KindOf(part),
                    part.Outline
                )),
            ],
            Panels =
            [
                .. plan.Panels.Select(panel => new ChartPanel(
                    panel.Number,
                    panel.Centre,
                    panel.Corners
                )),
            ],
            Frames = frames,
            FallsShort =
            [
                .. plan.Coverage?.Uncovered.SelectMany(region => region.Holes.Prepend(region.Outer))
                    ?? [],
            ],
            Gaps = [.. plan.Coverage?.Gaps.Select(region => region.Outer) ?? []],
            ThinOverlaps = plan.ThinOverlaps,
        };
        var (centre, radius) = Reach(SkyPicture.ChartOf(scene, size));
        return scene with
        {
            Backdrop =
                backdrop
                ?? (madeUp.HasFlag(MadeUpParts.Nebulae) ? new MadeUpNebulae(scene.Targets) : null),
            Stars =
            [
                .. Stars(centre, radius, size, julianYear),
                .. madeUp.HasFlag(MadeUpParts.Stars) ? MadeUpStars(centre, radius, size) : [],
            ],
            Objects = Objects(target, centre, radius),
        };
    }

    /// <summary>The scene of one frame with a star in its middle.</summary>
    public static SkyScene AroundStar(
        ChartView view,
        string title,
        string summary,
        ChartPanel frame,
        PictureSize size,
        double julianYear
    )
    {
        var scene = new SkyScene
        {
            View = view,
            Title = title,
            Summary = summary,
            Panels = [frame],
        };
        var (centre, radius) = Reach(SkyPicture.ChartOf(scene, size));
        return scene with { Stars = Stars(centre, radius, size, julianYear) };
    }

    private static string SceneSummary(FramedPlan plan) =>
        Framing.Export.SummaryText.Sentence(plan);

    /// <summary>A circle on the sky that holds the whole chart.</summary>
    public static (SkyDirection Centre, Angle Radius) Reach(ChartGeometry chart)
    {
        PicturePoint[] corners =
        [
            new(chart.Left, chart.Top),
            new(chart.Left + chart.Width, chart.Top),
            new(chart.Left, chart.Top + chart.Height),
            new(chart.Left + chart.Width, chart.Top + chart.Height),
        ];
        var centre = chart.View.Centre;
        return (
            centre,
            corners
                .Select(corner => chart.PictureToSky(corner).SeparationTo(centre))
                .Aggregate(Angle.Max)
        );
    }

    private static List<ChartStar> Stars(
        SkyDirection centre,
        Angle radius,
        PictureSize size,
        double julianYear
    )
    {
        var selection = new StarSelection { MostStars = MostIn(size), JulianYear = julianYear };
        return
        [
            .. StarCatalogue
                .Embedded.InCone(centre, radius, selection)
                .Select(star => new ChartStar(
                    star.At(julianYear),
                    star.VMagnitude,
                    star.BMinusV,
                    star.VMagnitude < FaintestNamed ? NameOf(star) : null
                )),
        ];
    }

    /// <summary>More than a picture of this size shows.</summary>
    private static int MostIn(PictureSize size) =>
        (int)
            Math.Clamp((long)size.Width * size.Height * MostStars / 1_600_000L, MostStars, 60_000L);

    private static IEnumerable<ChartStar> MadeUpStars(
        SkyDirection centre,
        Angle radius,
        PictureSize size
    ) =>
        new MadeUpSky()
            .InCone(centre, radius, new StarSelection { MostStars = MostIn(size) })
            .Select(star => new ChartStar(
                star.Direction,
                star.VMagnitude,
                star.BMinusV,
                Name: null,
                MadeUp: true
            ));

    private static string? NameOf(CatalogueStar star) =>
        star.Hipparcos is { } number ? StarCatalogue.NameOf(number)?.Label : null;

    private static List<ChartObject> Objects(Target target, SkyDirection centre, Angle radius)
    {
        var selection = new ObjectSelection { SmallestMajor = radius / 40.0, Reaching = true };
        return
        [
            .. ObjectCatalogue
                .Embedded.InCone(centre, radius, selection)
                .Where(thing => IsWorthShowing(thing) && thing.Major!.Value < radius * 2.0)
                .Where(thing => target.Parts.All(part => part.CatalogueId != thing.Id))
                .OrderBy(thing => thing.Name is null)
                .Take(MostObjects)
                .Select(thing => new ChartObject(
                    thing.Name ?? thing.Id,
                    KindOf(thing.Type),
                    OutlineOf(thing)
                )),
        ];
    }

    /// <summary>The long lists of Lynds' clouds overlap each other and everything else: only the named ones help.</summary>
    private static bool IsWorthShowing(DeepSkyObject thing) =>
        thing.Type != ObjectType.Group
        && thing.Type != ObjectType.GalaxyGroup
        && (
            thing.Name is not null
            || !(
                thing.Id.StartsWith("LBN", StringComparison.Ordinal)
                || thing.Id.StartsWith("LDN", StringComparison.Ordinal)
            )
        );

    private static SkyOutline OutlineOf(DeepSkyObject thing)
    {
        var major = thing.Major!.Value;
        return SkyOutline.Ellipse(
            thing.MiddleOfExtent,
            major,
            thing.MajorAxis is null ? major : thing.Minor ?? major,
            thing.MajorAxis ?? PositionAngle.North
        );
    }

    private static ChartObjectKind KindOf(TargetPart part) =>
        part.CatalogueId is { } id && ObjectCatalogue.Embedded.Find(id).Entry is DeepSkyObject thing
            ? KindOf(thing.Type)
            : ChartObjectKind.Nebula;

    private static ChartObjectKind KindOf(ObjectType type) =>
        type switch
        {
            ObjectType.DarkNebula => ChartObjectKind.DarkNebula,
            ObjectType.OpenCluster or ObjectType.GlobularCluster or ObjectType.StarCloud =>
                ChartObjectKind.StarCluster,
            ObjectType.Galaxy or ObjectType.GalaxyGroup => ChartObjectKind.Galaxy,
            _ => ChartObjectKind.Nebula,
        };
}
