using Framing.Strategies;

namespace Framing.TestPlugins;

[Strategy("tomorrow", "Built against the contract's next major version")]
public sealed class Tomorrow : IRotationStrategy
{
    public double ChooseDegrees() => 0.0;
}
