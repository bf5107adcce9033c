using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop.Tests;

/// <summary>Questions to strategies, about an ellipse of 4 by 1.8 degrees and a camera of 4144 x 2822 px of 4.63 um.</summary>
internal static class Questions
{
    public static Rig ShortLens { get; } = new(250.0, new Sensor(4144, 2822, 4.63));

    public static SkyOutline LongEllipse { get; } =
        SkyOutline.Ellipse(
            SkyDirection.FromDegrees(40.0, 60.0),
            Angle.FromDegrees(4.0),
            Angle.FromDegrees(1.8),
            PositionAngle.FromDegrees(25.0)
        );

    public static RotationQuestion Rotation(
        SkyOutline? outline = null,
        StrategySettings? settings = null,
        PositionAngle? present = null,
        IPanelCount? panels = null
    ) =>
        new()
        {
            Outline = outline ?? LongEllipse,
            Rig = ShortLens,
            TangentMargin = 0.0,
            PresentCameraAngle = present,
            Settings = settings ?? StrategySettings.None,
            Aids = Aids(panels),
        };

    public static OverlapQuestion Overlap(StrategySettings? settings = null) =>
        new()
        {
            Outline = LongEllipse,
            Rig = ShortLens,
            Pose = new(SkyDirection.FromDegrees(40.0, 60.0), PositionAngle.North),
            Settings = settings ?? StrategySettings.None,
            Aids = Aids(panels: null),
        };

    public static StrategySettings Settings(params (string Key, object Value)[] values) =>
        new(values.Select(value => KeyValuePair.Create(value.Key, value.Value)));

    private static StrategyAids Aids(IPanelCount? panels) =>
        new()
        {
            Panels = panels ?? new OnePanel(),
            Gaps = new NoGaps(),
            Stars = new NoStars(),
            SharedStars = new NoStrips(),
        };

    private sealed class OnePanel : IPanelCount
    {
        public PanelCount At(PositionAngle angle) => new(1, 1, 0.0);
    }

    private sealed class NoGaps : IGapChance
    {
        public double NoGap(PanelOverlap overlap) => 1.0;
    }

    private sealed class NoStrips : ISharedStars
    {
        public double Fewest(PanelOverlap overlap, double faintestMagnitude) =>
            double.PositiveInfinity;
    }

    private sealed class NoStars : IStarCount
    {
        public int Inside(SkyPolygon area, double faintestMagnitude) => 0;
    }
}
