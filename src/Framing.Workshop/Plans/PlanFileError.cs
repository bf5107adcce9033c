namespace Framing.Workshop;

/// <summary>One thing that is wrong in a plan file, with its place and what would be right.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Key">The key with its table (<c>rig.focal_length_mm</c>); empty when no key is to blame.</param>
/// <param name="Value">The value as written, on one line; null when none is to blame.</param>
/// <param name="Problem">What is wrong and what would be right, without a full stop.</param>
public sealed record PlanFileError(PlanPlace Place, string Key, string? Value, string Problem)
{
    /// <summary>Everything on one line, ready to print.</summary>
    public string Line =>
        (Key, Value) switch
        {
            ("", _) => $"{Place}: {Problem}",
            (_, null) => $"{Place}: {Key} {Problem}",
            _ => $"{Place}: {Key} = {Value}; {Problem}",
        };

    /// <inheritdoc/>
    public override string ToString() => Line;
}
