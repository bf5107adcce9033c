using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A closed line of arcs; what it bounds lies to its left.</summary>
internal sealed class SkyLoop
{
    /// <summary>Loops that lie within this chord of their first corner have their area from there.</summary>
    private const double Small = 1.0;

    /// <summary>Makes a loop.</summary>
    /// <param name="pieces">Numbers of its arcs, in order.</param>
    /// <param name="corners">Where each arc starts.</param>
    /// <param name="apex">The place opposite to which counts as infinitely far.</param>
    public SkyLoop(int[] pieces, Vector3D[] corners, Vector3D apex)
    {
        Pieces = pieces;
        Corners = corners;
        foreach (var corner in corners)
        {
            Reach = Math.Max(Reach, (corner - corners[0]).Length);
        }

        SignedArea = AreaAbout(apex);
        if (Reach < Small)
        {
            // Summed about a corner of its own, even the smallest loop keeps its digits.
            // Where the far place lies on the small side, the rest of the sphere is meant.
            var near = AreaAbout(corners[0]);
            SignedArea =
                Math.Abs(SignedArea - near) < Math.PI
                    ? near
                    : near + (Math.CopySign(4.0, SignedArea - near) * Math.PI);
        }
    }

    /// <summary>Numbers of the arcs, in order.</summary>
    public int[] Pieces { get; }

    /// <summary>Where each arc starts, unit vectors.</summary>
    public Vector3D[] Corners { get; }

    /// <summary>The chord from the first corner to the farthest.</summary>
    public double Reach { get; }

    /// <summary>
    /// Of the two areas that the loop parts the one without the far place, in steradians: positive when it lies to the
    /// left.
    /// </summary>
    public double SignedArea { get; }

    /// <summary>True when the loop lies between two places.</summary>
    /// <param name="place">A unit vector, not on the loop.</param>
    /// <param name="far">Another.</param>
    public bool Parts(Vector3D place, Vector3D far)
    {
        // Opposite places are joined by many arcs: go by a third one.
        if ((place + far).Length < 0.1)
        {
            var aside = place.Cross(
                Math.Abs(place.X) < 0.6 ? new Vector3D(1.0, 0.0, 0.0) : new(0.0, 1.0, 0.0)
            );
            aside = aside.Unit();
            return Odd(place, aside) != Odd(aside, far);
        }

        return Odd(place, far);
    }

    /// <summary>The loop the other way round.</summary>
    /// <param name="apex">For <see cref="SkyLoop"/>.</param>
    public SkyLoop Reversed(Vector3D apex) =>
        new([.. Pieces.Reverse()], [.. Corners.Reverse()], apex);

    private bool Odd(Vector3D p, Vector3D q)
    {
        var odd = false;
        var plane = p.Cross(q);
        var before = plane.Dot(Corners[^1]);
        for (int i = 0, j = Corners.Length - 1; i < Corners.Length; j = i++)
        {
            var after = plane.Dot(Corners[i]);
            if (before >= 0.0 != after >= 0.0)
            {
                var side = Corners[j].Cross(Corners[i]);
                double atP = side.Dot(p),
                    atQ = side.Dot(q);
                if (atP >= 0.0 != atQ >= 0.0)
                {
                    // The two great circles meet at two opposite places; the arcs cross when both reach the same one.
                    var onSide = (Corners[j] * Math.Abs(after)) + (Corners[i] * Math.Abs(before));
                    var onPath = (p * Math.Abs(atQ)) + (q * Math.Abs(atP));
                    odd ^= onSide.Dot(onPath) > 0.0;
                }
            }

            before = after;
        }

        return odd;
    }

    private double AreaAbout(Vector3D apex)
    {
        var sum = 0.0;
        for (int i = 0, j = Corners.Length - 1; i < Corners.Length; j = i++)
        {
            sum += ArcArea.Triangle(apex, Corners[j], Corners[i]);
        }

        return sum;
    }
}
