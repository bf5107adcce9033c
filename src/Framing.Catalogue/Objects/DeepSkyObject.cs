using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>A nebula, cluster or galaxy, or a group of them that makes one picture.</summary>
public sealed class DeepSkyObject : CatalogueEntry
{
    internal DeepSkyObject(int row, ObjectRow values)
        : base(values.Id, values.Name, values.Direction)
    {
        Row = row;
        OtherIds = values.OtherIds;
        Members = values.Members;
        Type = values.Type;
        MiddleOfExtent = values.MiddleOfExtent;
        Major = values.Major;
        Minor = values.Minor;
        MajorAxis = values.PositionAngle;
        VMagnitude = values.VMagnitude;
        SizeQuality = values.SizeQuality;
        Source = values.Source;
    }

    /// <summary>Other designations of the same thing.</summary>
    public IReadOnlyList<string> OtherIds { get; }

    /// <summary>Designations of the objects a group consists of; empty for a single object.</summary>
    public IReadOnlyList<string> Members { get; }

    /// <summary>What kind of thing it is.</summary>
    public ObjectType Type { get; }

    /// <summary>The middle of the ellipse or box that the sizes describe, ICRS.</summary>
    /// <remarks>
    /// The same as <see cref="CatalogueEntry.Direction"/> but for a few large nebulae, whose catalogued place is a bright
    /// part of them (Messier 8: 16 arcmin apart). This is the one to frame.
    /// </remarks>
    public SkyDirection MiddleOfExtent { get; }

    /// <summary>Full length; null if unknown.</summary>
    public Angle? Major { get; }

    /// <summary>Full width; null if unknown. With a known length, an unknown width means "take it as round".</summary>
    public Angle? Minor { get; }

    /// <summary>Position angle of the length, north through east, 0 to 179°; null if unknown or round.</summary>
    public PositionAngle? MajorAxis { get; }

    /// <summary>Integrated magnitude in V; null if unknown, as for most nebulae.</summary>
    public double? VMagnitude { get; }

    /// <summary>Where the sizes come from.</summary>
    public SizeQuality SizeQuality { get; }

    /// <summary>Where place and sizes come from, in words.</summary>
    public string Source { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<string> Names =>
        Name is null || Name == Id ? [Id, .. OtherIds] : [Name, Id, .. OtherIds];

    /// <inheritdoc/>
    public override string Label =>
        Name is null ? Id
        : Name.Contains(Id, StringComparison.Ordinal) ? Name
        : $"{Name} ({Id})";

    internal int Row { get; }
}
