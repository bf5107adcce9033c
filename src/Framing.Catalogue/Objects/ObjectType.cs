namespace Framing.Catalogue;

/// <summary>What kind of thing a deep-sky object is.</summary>
public enum ObjectType
{
    /// <summary>An open star cluster.</summary>
    OpenCluster,

    /// <summary>A globular star cluster.</summary>
    GlobularCluster,

    /// <summary>A galaxy.</summary>
    Galaxy,

    /// <summary>Several galaxies, from a pair to a rich cluster.</summary>
    GalaxyGroup,

    /// <summary>A planetary nebula.</summary>
    PlanetaryNebula,

    /// <summary>A cloud of glowing gas.</summary>
    EmissionNebula,

    /// <summary>Dust lit by stars.</summary>
    ReflectionNebula,

    /// <summary>Dust that hides what lies behind it.</summary>
    DarkNebula,

    /// <summary>What is left of a star that exploded.</summary>
    SupernovaRemnant,

    /// <summary>A bright part of the Milky Way.</summary>
    StarCloud,

    /// <summary>Several objects that make one picture; also a few loose patterns of stars.</summary>
    Group,
}
