namespace Framing.Solving;

/// <summary>What came of a frame.</summary>
/// <param name="Solution">Where it points; null if it was not solved.</param>
/// <param name="Refusal">Why not.</param>
/// <param name="Guesses">How many guesses were looked at.</param>
public sealed record SolveAnswer(SolvedFrame? Solution, SolveRefusal Refusal, int Guesses);
