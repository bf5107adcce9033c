namespace Framing.Sky;

/// <summary>The galactic frame: the plane of the Milky Way as its equator, longitude counted from the centre.</summary>
/// <remarks>
/// <list type="number">
/// <item>A fixed rotation of ICRS: the pole is at right ascension 192.85948°, declination +27.12825°, and the ascending node of
/// the plane on the equator of ICRS has galactic longitude 32.93192°.</item>
/// <item>The origin is 4 arcmin from Sagittarius A*, for it was fixed in 1958.</item>
/// </list>
/// Source: The Hipparcos and Tycho Catalogues, ESA SP-1200 (1997), vol. 1, section 1.5.3.
/// </remarks>
public static class GalacticFrame
{
    private static readonly Rotation FromIcrs =
        Rotation.AboutZ(Angle.FromDegrees(-32.93192))
        * Rotation.AboutX(Angle.FromDegrees(90.0 - 27.12825))
        * Rotation.AboutZ(Angle.FromDegrees(90.0 + 192.85948));

    /// <summary>The galactic north pole, ICRS.</summary>
    public static SkyDirection NorthPole { get; } = SkyDirection.FromDegrees(192.85948, 27.12825);

    /// <summary>The origin of the frame, towards the centre of the Milky Way, ICRS.</summary>
    public static SkyDirection Centre { get; } = SkyDirection.FromVector(FromIcrs.X);

    /// <summary>Galactic coordinates of a direction.</summary>
    /// <param name="direction">The direction, ICRS.</param>
    /// <returns>Longitude from 0 (included) to 360° (left out), 0 exactly at a pole; latitude -90° to +90°.</returns>
    /// <exception cref="ArgumentException">No direction.</exception>
    public static GalacticCoordinates ToGalactic(SkyDirection direction)
    {
        if (direction.IsDefault)
        {
            throw new ArgumentException(
                "Galactic coordinates need a direction.",
                nameof(direction)
            );
        }

        var turned = SkyDirection.FromVector(FromIcrs.Apply(direction.Vector));
        return new(turned.RightAscension, turned.Declination);
    }

    /// <summary>The direction with given galactic coordinates.</summary>
    /// <param name="coordinates">Any longitude, whole turns do not matter; latitude -90° to +90°.</param>
    /// <returns>The direction, ICRS.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is beyond a pole, or a value is not finite.</exception>
    public static SkyDirection ToIcrs(GalacticCoordinates coordinates)
    {
        if (coordinates.Latitude.Degrees is not (>= -90.0 and <= 90.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(coordinates),
                coordinates.Latitude.Degrees,
                "A galactic latitude lies between -90 and +90 degrees."
            );
        }

        var turned = SkyDirection.FromRaDec(coordinates.Longitude, coordinates.Latitude);
        return SkyDirection.FromVector(FromIcrs.Undo(turned.Vector));
    }
}
