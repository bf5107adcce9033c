namespace Framing.Planning.Tests;

/// <summary>Long sweeps run where the environment says FRAMING_LONG=1; a short seeded part of each always does.</summary>
internal static class LongRun
{
    public static bool Wanted => Environment.GetEnvironmentVariable("FRAMING_LONG") == "1";
}
