using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning.Tests;

/// <summary>Requests to start from, with strategies that answer plainly.</summary>
internal static class Requests
{
    /// <summary>250 mm and 4144 x 2822 px of 4.63 µm: 4.396° x 2.994°.</summary>
    public static Rig ShortLens { get; } = new(250.0, new Sensor(4144, 2822, 4.63));

    public static FramingRequest Of(
        SkyOutline outline,
        IRotationStrategy? rotation = null,
        IOverlapStrategy? overlap = null,
        GridWish grid = default
    ) =>
        new()
        {
            Title = "Test",
            Rig = ShortLens,
            Target = TargetBuilder.FromOutline("the cloud", outline),
            Rotation = new("test-rotation", rotation ?? new Turn(0.0), StrategySettings.None),
            Overlap = new("test-overlap", overlap ?? new Share(0.15), StrategySettings.None),
            Grid = grid,
            At = new DateTime(2026, 12, 6, 0, 0, 0, DateTimeKind.Utc),
            Stars = new NoStars(),
        };

    public static FramedPlan Framed(FramingRequest request)
    {
        var outcome = FramingStep.Frame(request);
        Assert.Null(outcome.Refusal);
        return outcome.Plan!;
    }

    public static SkyOutline Box(
        double ra,
        double dec,
        double alongDeg,
        double acrossDeg,
        double angleDeg
    ) =>
        SkyOutline.Rectangle(
            SkyDirection.FromDegrees(ra, dec),
            Angle.FromDegrees(alongDeg),
            Angle.FromDegrees(acrossDeg),
            PositionAngle.FromDegrees(angleDeg)
        );

    internal sealed class Turn(double degrees) : IRotationStrategy
    {
        public RotationAnswer Choose(RotationQuestion question) =>
            RotationAnswer.Turn(PositionAngle.FromDegrees(degrees), "as told");
    }

    internal sealed class Best : IRotationStrategy
    {
        public RotationAnswer Choose(RotationQuestion question) =>
            RotationAnswer.Turn(
                MosaicFit
                    .LargestMargin(
                        question.Outline,
                        question.Rig.Field,
                        question.Overlap,
                        question.Grid,
                        question.TangentMargin,
                        question.MostPanels,
                        question.PresentCameraAngle
                    )
                    .Frame.Pose.PositionAngle,
                "best"
            );
    }

    internal sealed class Refuse : IRotationStrategy
    {
        public RotationAnswer Choose(RotationQuestion question) =>
            RotationAnswer.Refuse("no angle is known");
    }

    internal sealed class Share(double fraction) : IOverlapStrategy
    {
        public OverlapAnswer Choose(OverlapQuestion question) =>
            OverlapAnswer.Share(
                new(
                    question.Rig.Field.TangentWidth * fraction,
                    question.Rig.Field.TangentHeight * fraction
                ),
                "as told"
            );
    }

    /// <summary>An overlap that hangs on the camera angle, as a strategy that counts stars would have it.</summary>
    internal sealed class ShareByAngle : IOverlapStrategy
    {
        public int Asked { get; private set; }

        public OverlapAnswer Choose(OverlapQuestion question)
        {
            Asked++;
            var part = 0.1 + (0.05 * Math.Abs(Math.Sin(question.Pose.PositionAngle.Radians)));
            return OverlapAnswer.Share(
                new(
                    question.Rig.Field.TangentWidth * part,
                    question.Rig.Field.TangentHeight * part
                ),
                "by angle"
            );
        }
    }

    private sealed class NoStars : IStarCount
    {
        public int Inside(SkyPolygon area, double faintestMagnitude) => 0;
    }
}
