using Framing.Mosaics;

namespace Framing.Planning;

/// <summary>All frames so far against a plan.</summary>
public sealed record PlanTally
{
    /// <summary>The panels in their order.</summary>
    public required IReadOnlyList<PanelTally> Panels { get; init; }

    /// <summary>Pictures of the sky that do not count, each with its reason.</summary>
    public required IReadOnlyList<LeftOutFrame> LeftOut { get; init; }

    /// <summary>Flats, darks and bias.</summary>
    public required IReadOnlyList<CalibrationFrame> Calibration { get; init; }

    /// <summary>What of all panels together no counted frame covers.</summary>
    public required FrameCoverage Cover { get; init; }

    /// <summary>What is still to be shot, the panel that is furthest behind first; empty when every goal is reached.</summary>
    public required IReadOnlyList<NextShots> Next { get; init; }

    /// <summary>Frames that lie in the folder more than once, under other names or with other headers.</summary>
    public required int Doubles { get; init; }

    /// <summary>What the user should know.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
