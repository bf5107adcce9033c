namespace Framing.Web;

/// <summary>A piece of the plan's sentence; those with a name open an editor.</summary>
internal sealed record SentencePart(string Text, string? Opens = null);
