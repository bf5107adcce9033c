namespace Framing.Fits;

/// <summary>Which convention of lens distortion a header carries beside its projection.</summary>
public enum DistortionKind
{
    /// <summary>None: straight lines on the sky are straight lines in the picture.</summary>
    None,

    /// <summary>Polynomials of pixels, by the SIP convention.</summary>
    Sip,

    /// <summary>Polynomials of the plane, by the TPV convention or the older use of PV with TAN.</summary>
    Tpv,

    /// <summary>Another one (distortion tables, or the functions of the draft Paper IV).</summary>
    Other,
}
