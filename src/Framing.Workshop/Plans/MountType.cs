namespace Framing.Workshop;

/// <summary>How the mount is built, as far as the meridian matters.</summary>
public enum MountType
{
    /// <summary>A fork or arm on a wedge: no flip at the meridian; <c>wedge</c> in a plan.</summary>
    Wedge = 0,

    /// <summary>A German mount: it changes sides at the meridian; <c>german</c> in a plan.</summary>
    German = 1,
}
