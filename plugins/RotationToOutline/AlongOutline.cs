namespace Framing.Plugins;

/// <summary>A side of the sensor along the outline's long axis: the picture lies as its target does.</summary>
/// <remarks>The long axis runs along the narrowest strip that holds the outline.</remarks>
[Strategy("along-outline", "Lay a side of the sensor along the outline's long axis")]
[StrategySetting(
    "side",
    SettingKind.Text,
    "the side of the sensor that lies along the outline",
    Default = "long",
    Choices = "long|short"
)]
public sealed class AlongOutline : IRotationStrategy
{
    /// <summary>Answers the angle of the outline's long axis.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle; of equally good ones the one nearest to the present camera angle.</returns>
    public RotationAnswer Choose(RotationQuestion question)
    {
        var side = question.Settings.Text("side");
        var field = question.Rig.Field;
        var isTall = field.TangentHeight > field.TangentWidth;
        var upRunsAlong = isTall == string.Equals(side, "long", StringComparison.Ordinal);
        var quarter = Angle.FromDegrees(90.0);

        // A round outline has many narrowest strips. Asked for the one that crosses an angle best, the fit takes the one
        // that needs the smallest turn.
        var axis = OutlineFit.LongAxis(
            question.Outline,
            upRunsAlong
                ? question.PresentCameraAngle?.TurnedBy(quarter)
                : question.PresentCameraAngle
        );
        var up = upRunsAlong ? axis.Along : axis.Along.TurnedBy(quarter);
        return RotationAnswer.Turn(
            up.FrameNear(question.PresentCameraAngle),
            $"the {side} side of the sensor along the outline"
        );
    }
}
