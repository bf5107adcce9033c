namespace Framing.Plugins;

/// <summary>A side of the sensor along the plane of the Milky Way, as it runs through the middle of the picture.</summary>
[Strategy("along-galactic-plane", "Lay a side of the sensor along the plane of the Milky Way")]
[StrategySetting(
    "side",
    SettingKind.Text,
    "the side of the sensor that lies along the plane",
    Default = "long",
    Choices = "long|short"
)]
public sealed class AlongGalacticPlane : IRotationStrategy
{
    /// <summary>Answers the angle at the place where the middle of the frame comes to lie.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle; a refusal at a galactic pole, where no direction runs along the plane.</returns>
    public RotationAnswer Choose(RotationQuestion question)
    {
        var side = question.Settings.Text("side");
        var field = question.Rig.Field;
        var isTall = field.TangentHeight > field.TangentWidth;
        var upRunsAlong = isTall == string.Equals(side, "long", StringComparison.Ordinal);

        // Where the middle lies depends a little on the angle, and the angle on where the middle lies. Each round leaves
        // about the size of the outline in radians of what was wrong: 12 rounds are plenty for 10 degrees.
        var middle = question.Outline.Middle;
        var angle = PositionAngle.North;
        for (var round = 0; round < 12; round++)
        {
            if (Math.Abs(GalacticFrame.NorthPole.Vector.Dot(middle.Vector)) > 1.0 - 1e-9)
            {
                return RotationAnswer.Refuse(
                    "along-galactic-plane has no answer at a galactic pole; take north-up or to-outline"
                );
            }

            var towardsPole = middle.PositionAngleTo(GalacticFrame.NorthPole);
            angle = upRunsAlong ? towardsPole.TurnedBy(Angle.FromDegrees(90.0)) : towardsPole;
            middle = OutlineFit.AtAngle(question.Outline, field, angle).Pose.Centre;
        }

        return RotationAnswer.Turn(
            angle.FrameNear(question.PresentCameraAngle),
            $"the {side} side of the sensor along the plane of the Milky Way"
        );
    }
}
