namespace Framing.Mosaics;

/// <summary>A frame on the sky with what the outline needs in it, and how good that is: the smaller the better.</summary>
internal readonly record struct SphereFrame(
    FrameAxes Axes,
    double NeededWidth,
    double NeededHeight,
    double Value
);
