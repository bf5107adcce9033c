namespace Framing.TestPlugins;

public static class Own
{
    public static double Degrees => 77.0;
}
