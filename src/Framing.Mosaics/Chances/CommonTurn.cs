using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>What happens when all panels stand at their places but are turned by the same wrong angle.</summary>
/// <remarks>
/// <para>
/// Neighbours then shear rather than part. With steps s, t and panels W, H a hole opens where four panels meet only if
/// both W &lt; s cos θ + t sin θ and H &lt; t cos θ + s sin θ; its area is the product of what is missing. Derived; checked
/// against unions of turned rectangles (tests/reference/mosaics/t08_overlap.py).
/// </para>
/// <para>Flat geometry, in one tangent plane: near the middle of the mosaic.</para>
/// </remarks>
public static class CommonTurn
{
    /// <summary>The hole at each place where four panels meet.</summary>
    /// <param name="field">One panel.</param>
    /// <param name="overlap">What neighbours share as planned.</param>
    /// <param name="turn">By how much all panels are turned, to either side, 0 to 90°.</param>
    /// <returns>The area; none where the panels still meet.</returns>
    public static SolidAngle Hole(FieldShape field, PanelOverlap overlap, Angle turn)
    {
        GridSteps.Check(field, overlap);
        var (s, t) = Steps(field, overlap);
        var (sin, cos) = Math.SinCos(Math.Abs(turn.Radians));
        var across = (s * cos) + (t * sin) - field.TangentWidth;
        var along = (t * cos) + (s * sin) - field.TangentHeight;
        return across > 0.0 && along > 0.0 ? SolidAngle.FromSteradians(across * along) : default;
    }

    /// <summary>The turn from which on holes open where four panels meet.</summary>
    /// <param name="field">One panel.</param>
    /// <param name="overlap">What neighbours share as planned.</param>
    /// <returns>The turn; null when no turn up to 90° opens any.</returns>
    public static Angle? FirstHole(FieldShape field, PanelOverlap overlap)
    {
        GridSteps.Check(field, overlap);
        var (s, t) = Steps(field, overlap);

        // s cos θ + t sin θ = r cos(θ - p): above a size between two angles about p; the other one likewise about 90° - p.
        var reach = double.Hypot(s, t);
        if (reach <= field.TangentWidth || reach <= field.TangentHeight)
        {
            return null;
        }

        var peak = Math.Atan2(t, s);
        var spreadAcross = Math.Acos(field.TangentWidth / reach);
        var spreadAlong = Math.Acos(field.TangentHeight / reach);
        var first = Math.Max(peak - spreadAcross, (Math.PI / 2.0) - peak - spreadAlong);
        var last = Math.Min(peak + spreadAcross, (Math.PI / 2.0) - peak + spreadAlong);
        return first < last ? Angle.FromRadians(Math.Max(0.0, first)) : null;
    }

    private static (double Across, double Along) Steps(FieldShape field, PanelOverlap overlap) =>
        (field.TangentWidth - overlap.AlongWidth, field.TangentHeight - overlap.AlongHeight);
}
