namespace Framing.Workshop;

/// <summary>What is wrong with one setting of a strategy in a plan.</summary>
/// <param name="Key">The key it stands at; of a missing setting the key that should stand there.</param>
/// <param name="Problem">The value, what is wrong with it and what would be right, in one line without a full stop.</param>
/// <param name="IsMissing">True when the plan has no such key, so that only the place of its table can be named.</param>
public sealed record SettingFault(string Key, string Problem, bool IsMissing = false);
