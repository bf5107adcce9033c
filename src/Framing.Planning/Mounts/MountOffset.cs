using Framing.Sky;

namespace Framing.Planning;

/// <summary>How far a mount points from what was typed into its hand control.</summary>
/// <param name="RightAscension">Pointed minus typed, -180° to +180°, east positive.</param>
/// <param name="Declination">Pointed minus typed, north positive.</param>
public readonly record struct MountOffset(Angle RightAscension, Angle Declination)
{
    /// <summary>The offset between two places.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="pointed">Where the mount then pointed, in the same frame.</param>
    /// <returns>The offset.</returns>
    public static MountOffset Between(SkyDirection typed, SkyDirection pointed) =>
        new(
            (pointed.RightAscension - typed.RightAscension).WrappedSigned,
            pointed.Declination - typed.Declination
        );

    /// <summary>What to type so that the mount points at a place.</summary>
    /// <param name="place">The place wanted.</param>
    /// <returns>The place minus the offset; over a pole it goes on down the other side.</returns>
    public SkyDirection Correct(SkyDirection place)
    {
        var ra = place.RightAscension - RightAscension;
        var dec = (place.Declination - Declination).Degrees;
        return dec switch
        {
            > 90.0 => SkyDirection.FromRaDec(
                ra + Angle.FromDegrees(180.0),
                Angle.FromDegrees(180.0 - dec)
            ),
            < -90.0 => SkyDirection.FromRaDec(
                ra + Angle.FromDegrees(180.0),
                Angle.FromDegrees(-180.0 - dec)
            ),
            _ => SkyDirection.FromRaDec(ra, Angle.FromDegrees(dec)),
        };
    }
}
