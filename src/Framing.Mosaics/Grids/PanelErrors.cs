using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How far from its plan a panel is likely to be shot.</summary>
/// <param name="PointingSigma">Standard deviation of the pointing error on each axis of the sky.</param>
/// <param name="CameraAngleSigma">Standard deviation of the camera angle.</param>
/// <param name="Dither">The widest step of dithering to any side.</param>
/// <param name="Drift">How far the field creeps over the session because the mount's axis misses the pole.</param>
public readonly record struct PanelErrors(
    Angle PointingSigma,
    Angle CameraAngleSigma,
    Angle Dither,
    Angle Drift
);
