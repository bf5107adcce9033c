using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>Everything within an angle of a direction, the border included.</summary>
internal sealed class ConeRegion : SkyRegion
{
    public ConeRegion(SkyDirection centre, Angle radius)
    {
        if (centre.IsDefault)
        {
            throw new ArgumentException("A cone needs a direction.", nameof(centre));
        }

        if (radius.Degrees is not (>= 0.0 and <= 180.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(radius),
                radius,
                "The radius of a cone lies between 0 and 180 degrees."
            );
        }

        Middle = centre;
        Radius = radius;
    }

    public override SkyDirection Middle { get; }

    public override Angle Radius { get; }

    public override bool Contains(SkyDirection direction) =>
        Middle.SeparationTo(direction) <= Radius;

    public override Angle DistanceToBorder(SkyDirection direction)
    {
        var beyond = Middle.SeparationTo(direction) - Radius;
        return Angle.Max(beyond, -beyond);
    }
}
