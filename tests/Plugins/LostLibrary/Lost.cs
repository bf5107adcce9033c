namespace Framing.TestPlugins;

public abstract class Lost : IRotationStrategy
{
    public static double Degrees => 12.0;

    public abstract RotationAnswer Choose(RotationQuestion question);
}
