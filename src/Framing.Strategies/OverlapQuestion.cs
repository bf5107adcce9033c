using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Strategies;

/// <summary>What an overlap strategy is asked.</summary>
public sealed record OverlapQuestion
{
    /// <summary>What is to be photographed.</summary>
    public required SkyOutline Outline { get; init; }

    /// <summary>The lens or telescope with its camera.</summary>
    public required Rig Rig { get; init; }

    /// <summary>The middle of the mosaic and its camera angle, as far as they are known when this is asked.</summary>
    public required CameraPose Pose { get; init; }

    /// <summary>How many panels the plan asks for.</summary>
    public GridWish Grid { get; init; }

    /// <summary>How far from its plan a panel is likely to be shot.</summary>
    public PanelErrors Errors { get; init; }

    /// <summary>The chance, 0 to 1, that the plan wants for a mosaic without a gap.</summary>
    public double ChanceWanted { get; init; } = 0.99;

    /// <summary>The strategy's own settings from the plan file, checked against what it declares.</summary>
    public required StrategySettings Settings { get; init; }

    /// <summary>What a strategy may ask back.</summary>
    public required StrategyAids Aids { get; init; }
}
