using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>A loaded strategy with its name in the plan and its settings.</summary>
internal sealed record ChosenPlugin<TLoaded>(string Name, TLoaded Loaded, StrategySettings Settings)
    : IDisposable
    where TLoaded : IDisposable
{
    public void Dispose() => Loaded.Dispose();
}
