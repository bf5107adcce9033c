using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>A part of the sky that is searched, and a cone that holds all of it.</summary>
internal abstract class SkyRegion
{
    /// <summary>The middle of the cone that holds the region.</summary>
    public abstract SkyDirection Middle { get; }

    /// <summary>The radius of that cone.</summary>
    public abstract Angle Radius { get; }

    public abstract bool Contains(SkyDirection direction);

    /// <summary>How far a direction is from the region; zero inside.</summary>
    public Angle DistanceTo(SkyDirection direction) =>
        Contains(direction) ? Angle.Zero : DistanceToBorder(direction);

    /// <summary>How far a direction is from the nearest place of the region's border, inside and outside.</summary>
    public abstract Angle DistanceToBorder(SkyDirection direction);
}
