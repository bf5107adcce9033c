namespace Framing.Drawing;

/// <summary>The kinds of object that a chart draws apart: each has a stroke of its own, so that shape tells as well as colour.</summary>
public enum ChartObjectKind
{
    /// <summary>A bright nebula: emission, reflection, planetary, or the remnant of a supernova. A solid line.</summary>
    Nebula,

    /// <summary>A dark nebula. A dashed line.</summary>
    DarkNebula,

    /// <summary>An open or globular cluster, or a cloud of stars. A line of dots.</summary>
    StarCluster,

    /// <summary>A galaxy, or a group of them. Dashes and dots.</summary>
    Galaxy,
}
