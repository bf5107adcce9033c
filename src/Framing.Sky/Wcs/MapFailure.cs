namespace Framing.Sky;

/// <summary>Why a place of a picture shows no direction, or a direction appears nowhere in the plane of a picture.</summary>
public enum MapFailure : byte
{
    /// <summary>It does not fail: there is an answer.</summary>
    None,

    /// <summary>The direction lies on the half of the sky that the projection does not show (TAN, SIN: 90° away or more).</summary>
    BehindThePlane,

    /// <summary>
    /// The pixel lies outside the sky that the projection draws, as beyond the ellipse of AIT, or the direction is the one
    /// that the projection sends to infinity; also a number that is not finite.
    /// </summary>
    OffTheMap,

    /// <summary>The inverse of the lens distortion was not found: far outside the picture its polynomials fold over.</summary>
    NotConverged,
}
