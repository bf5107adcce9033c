namespace Framing.Workshop;

/// <summary>Which question a strategy answers.</summary>
public enum StrategyKind
{
    /// <summary>At which position angle the camera stands.</summary>
    Rotation = 0,

    /// <summary>How much sky neighbouring panels share.</summary>
    Overlap = 1,
}
