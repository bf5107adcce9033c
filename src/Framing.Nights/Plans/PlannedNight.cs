using Framing.Sky;

namespace Framing.Nights;

/// <summary>One night of a plan.</summary>
public sealed record PlannedNight
{
    /// <summary>The night.</summary>
    public required NightOfSun Sun { get; init; }

    /// <summary>How dark it is at least in <see cref="Dark"/>; less than was wanted where the night has no better.</summary>
    public required DarknessWanted Darkness { get; init; }

    /// <summary>When it is as dark; empty when it never is.</summary>
    public required IReadOnlyList<UtcInterval> Dark { get; init; }

    /// <summary>When subs can be shot: dark and after setting up; empty when there is no such time.</summary>
    public required IReadOnlyList<UtcInterval> Usable { get; init; }

    /// <summary>The Moon.</summary>
    public required NightMoon Moon { get; init; }

    /// <summary>For each panel the stretches in which it can be reached in the usable time, the Moon left aside.</summary>
    public required IReadOnlyList<IReadOnlyList<UtcInterval>> Reachable { get; init; }

    /// <summary>For each panel the highest apparent altitude in the usable time; null where there is no such time.</summary>
    public required IReadOnlyList<Angle?> Highest { get; init; }

    /// <summary>The blocks in shooting order.</summary>
    public required IReadOnlyList<NightBlock> Blocks { get; init; }

    /// <summary>When flats are taken after the last block; null without blocks or flats.</summary>
    public required UtcInterval? Flats { get; init; }

    /// <summary>The middle of the dark time; of the night where it is never dark.</summary>
    public DateTime Middle =>
        Dark.Count > 0
            ? Dark[0].Start + ((Dark[^1].End - Dark[0].Start) / 2.0)
            : Sun.Start + ((Sun.End - Sun.Start) / 2.0);

    /// <summary>Changes of panel within the night.</summary>
    public int Changes => Blocks.Skip(1).Zip(Blocks, (b, a) => a.Panel == b.Panel ? 0 : 1).Sum();
}
