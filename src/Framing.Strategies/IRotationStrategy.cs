namespace Framing.Strategies;

/// <summary>Decides at which position angle the camera stands.</summary>
/// <remarks>
/// A strategy is a public class with a public constructor without parameters and a <see cref="StrategyAttribute"/>. It
/// is asked a few times for one plan and must answer the same question the same way. It keeps nothing between questions,
/// reads no file and no clock.
/// </remarks>
public interface IRotationStrategy
{
    /// <summary>Answers at which angle to turn the camera.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle with a reason in plain words, or a refusal that says what is missing.</returns>
    RotationAnswer Choose(RotationQuestion question);
}
