namespace Framing.Nights;

/// <summary>Subs of one task shot in one go.</summary>
/// <param name="Task">The task, from 0.</param>
/// <param name="Minute">The whole minute of the night at which the first exposure begins.</param>
/// <param name="Subs">How many subs, 1 or more.</param>
internal readonly record struct ScheduledBlock(int Task, int Minute, int Subs);
