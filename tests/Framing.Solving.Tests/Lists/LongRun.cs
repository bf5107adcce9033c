namespace Framing.Solving.Tests;

/// <summary>How many lists a test makes: a seeded share always, all of them with FRAMING_LONG=1.</summary>
internal static class LongRun
{
    public static bool IsOn { get; } =
        string.Equals(
            Environment.GetEnvironmentVariable("FRAMING_LONG"),
            "1",
            StringComparison.Ordinal
        );

    public static int Count(int share, int all) => IsOn ? all : share;
}
