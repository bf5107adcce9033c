namespace Framing.Workshop;

/// <summary>Which column of a star table is what. Capitals and small letters are the same.</summary>
/// <param name="RightAscension">Number of the column.</param>
/// <param name="Declination">Number of the column.</param>
/// <param name="Magnitude">Number of the column.</param>
/// <param name="MotionEast">Number of the column, -1 if there is none: mas a year, times cos(declination) already.</param>
/// <param name="MotionNorth">Number of the column, -1 if there is none: mas a year.</param>
/// <param name="Epoch">Number of the column with the year of the place, -1 if there is none.</param>
internal sealed record StarColumns(
    int RightAscension,
    int Declination,
    int Magnitude,
    int MotionEast,
    int MotionNorth,
    int Epoch
)
{
    /// <summary>What to say of the columns that a table needs.</summary>
    public const string Wanted =
        "ra_deg, dec_deg and mag (pm_ra_cosdec_mas_yr, pm_dec_mas_yr and epoch may follow)";

    // The names that catalogues in open formats use for these, beside our own.
    private static readonly string[] RightAscensions = ["ra_deg", "ra", "raj2000", "ra_icrs"];
    private static readonly string[] Declinations = ["dec_deg", "dec", "dej2000", "de_icrs"];

    private static readonly string[] Magnitudes =
    [
        "mag",
        "v_mag",
        "vmag",
        "g_mag",
        "gmag",
        "phot_g_mean_mag",
        "magnitude",
    ];

    private static readonly string[] MotionsEast = ["pm_ra_cosdec_mas_yr", "pmra"];
    private static readonly string[] MotionsNorth = ["pm_dec_mas_yr", "pmdec", "pmde"];
    private static readonly string[] Epochs = ["epoch", "ref_epoch"];

    /// <summary>Finds the columns by their names.</summary>
    /// <param name="names">The names in order.</param>
    /// <returns>Null when right ascension, declination or magnitude is not among them.</returns>
    public static StarColumns? Of(IReadOnlyList<string> names)
    {
        var columns = new StarColumns(
            Find(names, RightAscensions),
            Find(names, Declinations),
            Find(names, Magnitudes),
            Find(names, MotionsEast),
            Find(names, MotionsNorth),
            Find(names, Epochs)
        );
        return columns.RightAscension < 0 || columns.Declination < 0 || columns.Magnitude < 0
            ? null
            : columns;
    }

    private static int Find(IReadOnlyList<string> names, string[] known)
    {
        foreach (var name in known)
        {
            for (var i = 0; i < names.Count; i++)
            {
                if (string.Equals(names[i], name, StringComparison.OrdinalIgnoreCase))
                {
                    return i;
                }
            }
        }

        return -1;
    }
}
