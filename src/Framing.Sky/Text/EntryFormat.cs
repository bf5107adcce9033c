namespace Framing.Sky;

/// <summary>How a hand control wants its coordinates typed.</summary>
public enum EntryFormat
{
    /// <summary>Hours, minutes, seconds; degrees, minutes, seconds: 2h 33m 21s, +61° 27′ 10″. <c>hms-dms</c> in a plan.</summary>
    HmsDms = 0,

    /// <summary>Hours and tenths of minutes; degrees and minutes: 2h 33.4m, +61° 27′. <c>hm.m-dm</c> in a plan.</summary>
    HmDm = 1,

    /// <summary>Degrees with four decimals: 38.3375, +61.4528. <c>degrees</c> in a plan.</summary>
    Degrees = 2,
}
