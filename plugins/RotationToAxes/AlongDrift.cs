namespace Framing.Plugins;

/// <summary>
/// A side of the sensor along right ascension, so that what tracking leaves over runs along rows or columns of pixels and
/// not across them.
/// </summary>
/// <remarks>
/// The errors of a mount's gears run along right ascension, those of its axis mostly along declination: at 0, 90, 180 and
/// 270° both lie along a side. North is that of ICRS; the mount's own differs by a few tenths of a degree, which no ring
/// can be set to.
/// </remarks>
[Strategy(
    "along-drift",
    "Rows along right ascension or declination, so that leftover drift runs along a side"
)]
[StrategySetting(
    "rows",
    SettingKind.Text,
    "what the rows of the picture run along",
    Default = "right-ascension",
    Choices = "right-ascension|declination"
)]
public sealed class AlongDrift : IRotationStrategy
{
    /// <summary>Answers one of two opposite angles.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The one nearer to the present camera angle, else 0 or 90°.</returns>
    public RotationAnswer Choose(RotationQuestion question)
    {
        var rows = question.Settings.Text("rows");
        var isRightAscension = string.Equals(rows, "right-ascension", StringComparison.Ordinal);
        return RotationAnswer.Turn(
            (isRightAscension ? PositionAngle.North : PositionAngle.East).FrameNear(
                question.PresentCameraAngle
            ),
            $"rows along {rows.Replace('-', ' ')}"
        );
    }
}
