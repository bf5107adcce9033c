namespace Framing.Catalogue;

/// <summary>Where the size of an object comes from.</summary>
public enum SizeQuality
{
    /// <summary>There is no size.</summary>
    None,

    /// <summary>Measured: on a drawn outline, or from the places and sizes of the members.</summary>
    Measured,

    /// <summary>The value of a catalogue.</summary>
    Catalogue,

    /// <summary>From memory of published values, good to 10 to 20 %, or the diameter of a circle of the catalogued area.</summary>
    Approximate,

    /// <summary>From a collection whose sizes were not checked; of galaxies often too small.</summary>
    Unverified,
}
