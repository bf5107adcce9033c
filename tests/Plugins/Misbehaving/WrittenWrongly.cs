namespace Framing.TestPlugins;

/// <summary>Classes that carry [Strategy] and cannot be strategies, each for one reason.</summary>
public static class WrittenWrongly
{
    [Strategy("answers-neither", "Implements no question")]
    public sealed class AnswersNeither;

    [Strategy("is-abstract", "Cannot be made")]
    public abstract class IsAbstract : Sound;

    [Strategy("is-generic", "Cannot be made without a type")]
    public sealed class IsGeneric<T> : Sound
    {
        public T? Value { get; init; }
    }

    [Strategy("needs-an-argument", "Cannot be made without an argument")]
    public sealed class NeedsAnArgument(double degrees) : Sound
    {
        public double Degrees { get; } = degrees;
    }

    [Strategy("is-internal", "Cannot be seen")]
    internal sealed class IsInternal : Sound;

    [Strategy("Bad Name", "A name that no plan can use")]
    public sealed class BadName : Sound;

    [Strategy("bad-key", "A key that no plan can use")]
    [StrategySetting("Angle°", SettingKind.Number, "angle")]
    public sealed class BadKey : Sound;

    [Strategy("twice-declared", "Declares a setting twice")]
    [StrategySetting("angle_deg", SettingKind.Number, "angle")]
    [StrategySetting("angle_deg", SettingKind.Text, "angle")]
    public sealed class TwiceDeclared : Sound;

    [Strategy("key-of-the-plan", "Declares a key that the plan itself has")]
    [StrategySetting("camera_angle_deg", SettingKind.Number, "angle")]
    public sealed class KeyOfThePlan : Sound;

    [Strategy("bad-default", "Declares a default out of its own range")]
    [StrategySetting("angle_deg", SettingKind.Number, "angle", Default = "361", Most = 360.0)]
    public sealed class BadDefault : Sound;

    [Strategy("unknown-kind", "Declares a setting of a kind there is not")]
    [StrategySetting("angle_deg", (SettingKind)17, "angle")]
    public sealed class UnknownKind : Sound;

    /// <summary>Sound, nested, and a strategy through its base class.</summary>
    [Strategy("nested-and-sound", "A nested class that answers through its base class")]
    public sealed class NestedAndSound : Sound;

    public abstract class Sound : IRotationStrategy
    {
        public RotationAnswer Choose(RotationQuestion question) =>
            RotationAnswer.Turn(PositionAngle.FromDegrees(44.0), "44 degrees");
    }
}
