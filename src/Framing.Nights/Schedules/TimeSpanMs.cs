namespace Framing.Nights;

/// <summary>A stretch of a night, milliseconds after the night's first minute.</summary>
internal readonly record struct TimeSpanMs(int From, int To);
