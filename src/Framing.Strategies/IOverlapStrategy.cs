namespace Framing.Strategies;

/// <summary>Decides how much sky neighbouring panels share.</summary>
/// <remarks>What is said of <see cref="IRotationStrategy"/> holds here too.</remarks>
public interface IOverlapStrategy
{
    /// <summary>Answers how much sky neighbouring panels share.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The overlap with a reason in plain words, or a refusal that says what is missing.</returns>
    OverlapAnswer Choose(OverlapQuestion question);
}
