using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Strategies;

/// <summary>What a rotation strategy is asked.</summary>
public sealed record RotationQuestion
{
    /// <summary>What is to be photographed.</summary>
    public required SkyOutline Outline { get; init; }

    /// <summary>The lens or telescope with its camera.</summary>
    public required Rig Rig { get; init; }

    /// <summary>The margin wanted on all four sides of the outline, dithering included, as a tangent.</summary>
    public required double TangentMargin { get; init; }

    /// <summary>Where the camera stands now, if the user knows.</summary>
    public PositionAngle? PresentCameraAngle { get; init; }

    /// <summary>How many panels the plan asks for.</summary>
    public GridWish Grid { get; init; }

    /// <summary>The most panels that the plan allows.</summary>
    public int MostPanels { get; init; } = 100;

    /// <summary>The overlap that neighbouring panels have, as far as it is known when this is asked.</summary>
    public PanelOverlap Overlap { get; init; }

    /// <summary>The strategy's own settings from the plan file, checked against what it declares.</summary>
    public required StrategySettings Settings { get; init; }

    /// <summary>What a strategy may ask back.</summary>
    public required StrategyAids Aids { get; init; }
}
