using Framing.Mosaics;

namespace Framing.Planning;

/// <summary>What a plan frames.</summary>
public sealed class Target
{
    /// <summary>Makes a target.</summary>
    /// <param name="name">How it is called in sentences.</param>
    /// <param name="parts">What it is made of, one or more.</param>
    /// <param name="notes">What the user should know of the outline: an angle or a size that is not known.</param>
    /// <exception cref="ArgumentException">No part is given.</exception>
    public Target(string name, IReadOnlyList<TargetPart> parts, IReadOnlyList<string> notes)
    {
        ArgumentNullException.ThrowIfNull(parts);
        Name = name;
        Parts = [.. parts];
        Notes = [.. notes];
        Outline = SkyOutline.Together(parts.Select(part => part.Outline));
    }

    /// <summary>How it is called in sentences.</summary>
    public string Name { get; }

    /// <summary>What it is made of.</summary>
    public IReadOnlyList<TargetPart> Parts { get; }

    /// <summary>What the user should know of the outline.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>The outline of all parts together, J2000.</summary>
    public SkyOutline Outline { get; }
}
