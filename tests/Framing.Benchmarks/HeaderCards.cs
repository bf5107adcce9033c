namespace Framing.Benchmarks;

/// <summary>World coordinates of a camera of 26 million pixels behind 300 mm, turned by 30 degrees.</summary>
internal static class HeaderCards
{
    /// <summary>A plain tangent plane.</summary>
    public static readonly string[] Tangent =
    [
        "WCSAXES =                    2",
        "CTYPE1  = 'RA---TAN'",
        "CTYPE2  = 'DEC--TAN'",
        "CUNIT1  = 'deg'",
        "CUNIT2  = 'deg'",
        "CRVAL1  =                314.0",
        "CRVAL2  =                 44.0",
        "CRPIX1  =               3124.5",
        "CRPIX2  =               2088.5",
        "CD1_1   = -6.2189899403549E-04",
        "CD1_2   =  3.5905355161515E-04",
        "CD2_1   =  3.5905355161515E-04",
        "CD2_2   =  6.2189899403549E-04",
        "RADESYS = 'ICRS'",
    ];

    // A real lens's third order: 9 px at the corner.
    private static readonly string[] Distortion =
    [
        "A_ORDER =                    3",
        "A_2_0   =               1.1E-7",
        "A_1_1   =                -6E-8",
        "A_0_2   =                 4E-8",
        "A_3_0   =             1.35E-10",
        "A_2_1   =                3E-12",
        "A_1_2   =             1.42E-10",
        "A_0_3   =               -2E-12",
        "B_ORDER =                    3",
        "B_2_0   =                -3E-8",
        "B_1_1   =                 9E-8",
        "B_0_2   =                 7E-8",
        "B_3_0   =                1E-12",
        "B_2_1   =             1.38E-10",
        "B_1_2   =               -4E-12",
        "B_0_3   =             1.31E-10",
    ];

    // Its reverse, good to 0.013 px.
    private static readonly string[] Reverse =
    [
        "AP_ORDER=                    3",
        "AP_0_1  =   -7.8169400256E-09",
        "AP_0_2  =   -3.9880234379E-08",
        "AP_0_3  =    1.9940346014E-12",
        "AP_1_0  =     -2.48493829E-06",
        "AP_1_1  =    5.9696789395E-08",
        "AP_1_2  =   -1.4106232308E-10",
        "AP_2_0  =   -1.0933611123E-07",
        "AP_2_1  =    -3.007084525E-12",
        "AP_3_0  =   -1.3418833988E-10",
        "BP_ORDER=                    3",
        "BP_0_1  =   -1.7700910112E-06",
        "BP_0_2  =   -6.9836533315E-08",
        "BP_0_3  =   -1.3035233382E-10",
        "BP_1_0  =   -1.1088583704E-09",
        "BP_1_1  =   -8.9401912356E-08",
        "BP_1_2  =    3.9931076071E-12",
        "BP_2_0  =    2.9891666059E-08",
        "BP_2_1  =   -1.3719299988E-10",
        "BP_3_0  =   -1.0040585822E-12",
    ];

    /// <summary>The same behind a real lens, with reverse terms.</summary>
    public static IReadOnlyList<string> Distorted => [.. DistortedOneWay, .. Reverse];

    /// <summary>The same without reverse terms.</summary>
    public static IReadOnlyList<string> DistortedOneWay =>
        [
            .. Tangent.Select(card => card.Replace("TAN'", "TAN-SIP'", StringComparison.Ordinal)),
            .. Distortion,
        ];

    /// <summary>A canvas of 3840 x 2160 about the same place, north up, 5 arcsec a pixel.</summary>
    public static IReadOnlyList<string> Canvas =>
        [
            .. Tangent.Take(7),
            "CRPIX1  =               1920.5",
            "CRPIX2  =               1080.5",
            "CD1_1   = -1.3888888888889E-03",
            "CD1_2   =                  0.0",
            "CD2_1   =                  0.0",
            "CD2_2   =  1.3888888888889E-03",
            "RADESYS = 'ICRS'",
        ];
}
