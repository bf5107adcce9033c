namespace Framing.Strategies;

public interface IRotationStrategy
{
    double ChooseDegrees();
}
