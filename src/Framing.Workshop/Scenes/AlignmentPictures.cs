using Framing.Drawing;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Small pictures of what the camera will show with a star for aligning in its middle.</summary>
internal static class AlignmentPictures
{
    private static readonly PictureSize Small = new(640, 480);

    // A wider field cannot be shown in one plane.
    private static readonly Angle Widest = Angle.FromDegrees(85.0);

    /// <summary>Lays out a picture for each star, as the camera stands: mirrored if the rig is.</summary>
    public static IReadOnlyList<(string Name, SkyPicture Picture)> Of(
        FramedPlan plan,
        AlignmentNotes alignment,
        PicturePalette palette
    )
    {
        var up = plan.Request.PresentCameraAngle ?? plan.Pose.PositionAngle;
        var rig = plan.Request.Rig;
        var year = TerrestrialTime.FromUtc(alignment.At).JulianYear;
        if (rig.Field.Diagonal > Widest)
        {
            return [];
        }

        return
        [
            .. alignment.Stars.Select(
                (star, i) =>
                {
                    var centre = star.Star.Icrs;
                    var corners = rig.Field.Corners(new(centre, up), rig.Mirrored);
                    var scene = SceneMaker.AroundStar(
                        ChartView.Around(corners, up, rig.Mirrored),
                        star.Star.Name,
                        Summary(plan, up),
                        new(0, centre, corners),
                        Small,
                        year
                    );
                    return (
                        FormattableString.Invariant($"align-{i + 1}.png"),
                        SkyPicture.Compose(scene, Small, palette)
                    );
                }
            ),
        ];
    }

    private static string Summary(FramedPlan plan, PositionAngle up) =>
        FormattableString.Invariant($"In the camera at {up.Degrees:0.#}°")
        + (plan.Request.PresentCameraAngle is null ? " (as planned)" : " (as it stands now)")
        + (plan.Request.Rig.Mirrored ? ", mirrored." : ".");
}
