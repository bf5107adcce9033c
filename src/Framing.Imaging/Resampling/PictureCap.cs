using Framing.Sky;

namespace Framing.Imaging;

/// <summary>A round piece of sky that holds all that a picture shows: what lies outside it need not be looked up.</summary>
internal sealed class PictureCap
{
    private const int StepsASide = 32;

    private readonly Vector3D centre;
    private readonly double radius;

    private PictureCap(Vector3D centre, double radius) =>
        (this.centre, this.radius) = (centre, radius);

    /// <summary>The cap of a picture; null where its border does not lie within a quarter of the sky of its middle, as in a map of the whole sky.</summary>
    public static PictureCap? Of(WorldCoordinates world, int width, int height)
    {
        if (!world.TryCentre(width, height, out var middle))
        {
            return null;
        }

        // A pixel more than the picture has, and a little for the border between the steps.
        var farthest = 0.0;
        for (var i = 0; i <= StepsASide; i++)
        {
            var (x, y) = (
                ((width + 2.0) * i / StepsASide) - 0.5,
                ((height + 2.0) * i / StepsASide) - 0.5
            );
            foreach (
                var pixel in (ReadOnlySpan<PixelPosition>)
                    [new(x, -0.5), new(x, height + 1.5), new(-0.5, y), new(width + 1.5, y)]
            )
            {
                if (!world.TryPixelToSky(pixel, out var direction))
                {
                    return null;
                }

                farthest = Math.Max(farthest, middle.SeparationTo(direction).Radians);
            }
        }

        return farthest < Math.PI / 2.0 ? new(middle.Vector, (farthest * 1.02) + 1e-9) : null;
    }

    /// <summary>True when a round piece of sky lies wholly outside.</summary>
    /// <param name="middle">Its middle.</param>
    /// <param name="size">Its radius, radians.</param>
    public bool Misses(Vector3D middle, double size) =>
        Math.Atan2(centre.Cross(middle).Length, centre.Dot(middle)) > radius + size;
}
