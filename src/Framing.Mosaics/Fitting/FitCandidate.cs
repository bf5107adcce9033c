using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Why an angle can be the best one.</summary>
internal enum FitKind
{
    /// <summary>A side of the hull lies along the width of the frame.</summary>
    SideAlongWidth,

    /// <summary>A side of the hull lies along the height of the frame.</summary>
    SideAlongHeight,

    /// <summary>Both terms of the goal are equal.</summary>
    BothEqual,

    /// <summary>The position angle is given.</summary>
    AngleGiven,

    /// <summary>The frame is moved, not turned.</summary>
    Unturned,
}

/// <summary>An angle at which a fit can be best, with what it gives in the plane.</summary>
/// <param name="Kind">Why.</param>
/// <param name="From">The corner where the side of the hull begins; of no meaning for the other kinds.</param>
/// <param name="To">The corner where it ends.</param>
/// <param name="Theta">Angle of the frame's width in the plane, radians from +xi towards +eta.</param>
/// <param name="Value">The goal there: the smaller the better.</param>
/// <param name="Centre">The best centre of the frame at this angle.</param>
internal readonly record struct FitCandidate(
    FitKind Kind,
    int From,
    int To,
    double Theta,
    double Value,
    PlanePoint Centre
);
