using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>Which of the objects in a part of the sky are wanted.</summary>
/// <remarks>The default is all of them, those without a size included, whose catalogued place lies inside.</remarks>
public sealed record ObjectSelection
{
    /// <summary>Every object whose catalogued place lies inside.</summary>
    public static ObjectSelection All { get; } = new();

    /// <summary>The smallest length wanted; zero for no limit. With a limit, objects of unknown size are left out.</summary>
    public Angle SmallestMajor { get; init; }

    /// <summary>The most objects wanted; the largest ones are given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below zero.</exception>
    public int MostObjects
    {
        get;
        init =>
            field =
                value >= 0
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(value),
                        value,
                        "A number of objects is not negative."
                    );
    } = int.MaxValue;

    /// <summary>True to add objects that may reach inside: the circle round the middle of their extent, as wide as they are long, touches the region.</summary>
    public bool Reaching { get; init; }
}
