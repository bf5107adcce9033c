namespace Framing.Workshop;

/// <summary>Which coordinates the hand control expects.</summary>
public enum GotoFrame
{
    /// <summary>True equator and equinox of date; <c>of-date</c> in a plan.</summary>
    OfDate = 0,

    /// <summary>J2000; <c>J2000</c> in a plan.</summary>
    J2000 = 1,
}
