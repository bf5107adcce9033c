using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How a mosaic is drawn again and again.</summary>
public sealed record TrialSettings
{
    /// <summary>How many mosaics are drawn, 1 or more.</summary>
    public int Trials { get; init; } = 20_000;

    /// <summary>Where the random numbers start: the same seed gives the same answer on every machine.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Standard deviation, on each axis, of a pointing error that all panels share; 0 or more.</summary>
    /// <remarks>It opens no gap, but it moves the mosaic off its target.</remarks>
    public Angle SharedPointingSigma { get; init; }

    /// <summary>Standard deviation of a camera-angle error that all panels share; 0 or more.</summary>
    public Angle SharedAngleSigma { get; init; }

    /// <summary>How many threads may draw at once; -1 for as many as the machine likes. The answer does not hang on it.</summary>
    public int MostThreads { get; init; } = -1;
}
