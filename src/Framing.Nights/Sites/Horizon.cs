using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>The skyline of a site: the lowest altitude at which the sky is free, for every azimuth.</summary>
/// <remarks>
/// Between two points of the skyline the altitude changes evenly with the azimuth; the last point is joined to the first
/// through north. What was measured on the spot holds refraction already: compare it with apparent altitudes.
/// </remarks>
public sealed class Horizon : IEquatable<Horizon>
{
    private readonly HorizonPoint[] points;
    private readonly double[] azimuths;
    private readonly double[] altitudes;

    /// <summary>Makes a skyline.</summary>
    /// <param name="measured">
    /// Its points in any order, two or more; azimuths from north (0) through east, whole turns do not matter, none twice.
    /// </param>
    /// <param name="azimuthOffset">Added to every azimuth to make it true: for bearings read off a compass, the declination of the needle (east positive).</param>
    /// <exception cref="ArgumentException">There are fewer than two points, two with one azimuth, or an altitude beyond ±90°.</exception>
    public Horizon(IEnumerable<HorizonPoint> measured, Angle azimuthOffset)
    {
        ArgumentNullException.ThrowIfNull(measured);
        points =
        [
            .. measured
                .Select(point => point with { Azimuth = (point.Azimuth + azimuthOffset).Wrapped })
                .OrderBy(point => point.Azimuth.Radians),
        ];
        if (points.Length < 2)
        {
            throw new ArgumentException("A skyline has two points or more.", nameof(measured));
        }

        azimuths = Array.ConvertAll(points, point => point.Azimuth.Degrees);
        altitudes = Array.ConvertAll(points, point => point.Altitude.Degrees);
        for (var i = 0; i < points.Length; i++)
        {
            if (
                Math.Abs(altitudes[i]) > 90.0
                || (i > 0 && azimuths[i] - azimuths[i - 1] < 1e-9)
                || azimuths[i] >= 360.0
            )
            {
                throw new ArgumentException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The skyline at azimuth {azimuths[i]}° has the altitude {altitudes[i]}°, or a second point there."
                    ),
                    nameof(measured)
                );
            }
        }
    }

    private Horizon() => (points, azimuths, altitudes) = ([], [], []);

    /// <summary>The horizon of a calm sea: altitude 0 all round.</summary>
    public static Horizon Flat { get; } = new();

    /// <summary>True for <see cref="Flat"/>: nothing was measured.</summary>
    public bool IsFlat => points.Length == 0;

    /// <summary>The points by growing true azimuth, 0 (included) to 360° (left out); none for a flat horizon.</summary>
    public IReadOnlyList<HorizonPoint> Points => points;

    /// <summary>How high the skyline stands.</summary>
    /// <param name="azimuth">The true azimuth, north 0, east 90°; whole turns do not matter.</param>
    /// <returns>Altitude as measured.</returns>
    public Angle AltitudeAt(Angle azimuth) =>
        IsFlat ? Angle.Zero : Angle.FromDegrees(DegreesAt(azimuth.Wrapped.Degrees));

    /// <summary>Whether a place stands above the skyline and above a least altitude.</summary>
    /// <param name="place">The place.</param>
    /// <param name="least">The least apparent altitude, whatever the skyline.</param>
    /// <returns>By how much it stands above the higher of the two; negative below.</returns>
    public Angle Clearance(in HorizontalPlace place, Angle least) =>
        place.Altitude - Angle.Max(least, AltitudeAt(place.Azimuth));

    /// <inheritdoc/>
    public bool Equals(Horizon? other) => other is not null && points.SequenceEqual(other.points);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Horizon);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        IsFlat ? 0 : HashCode.Combine(points.Length, points[0], points[^1]);

    private double DegreesAt(double azimuth)
    {
        var after = Array.BinarySearch(azimuths, azimuth);
        if (after >= 0)
        {
            return altitudes[after];
        }

        after = ~after;
        var last = azimuths.Length - 1;
        var (left, right) = after == 0 || after > last ? (last, 0) : (after - 1, after);
        var width = azimuths[right] - azimuths[left];
        var along = azimuth - azimuths[left];
        width += width <= 0.0 ? 360.0 : 0.0;
        along += along < 0.0 ? 360.0 : 0.0;
        return altitudes[left] + ((altitudes[right] - altitudes[left]) * (along / width));
    }
}
