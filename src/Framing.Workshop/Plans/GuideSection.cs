using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The guide camera: [guide].</summary>
/// <param name="FocalLengthMillimetres">Focal length of the guide lens in mm, more than 0.</param>
/// <param name="PixelMicrometres">Edge of a guide pixel in µm, more than 0.</param>
/// <param name="Star">Where the guide star stands on the imaging sensor.</param>
public sealed record GuideSection(
    double FocalLengthMillimetres,
    double PixelMicrometres,
    GuideStar Star
)
{
    /// <summary>The sky that one guide pixel spans.</summary>
    public Angle Scale => Angle.FromRadians(PixelMicrometres / (FocalLengthMillimetres * 1000.0));
}
