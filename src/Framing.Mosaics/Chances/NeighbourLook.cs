using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How one drawn panel sees the facing side of its neighbour: the depths of <see cref="FacingSides"/>, without angles.</summary>
/// <param name="Low">One end of the length on which the sides face each other, a tangent along the side.</param>
/// <param name="High">The other end; not above <paramref name="Low"/> when they do not face each other.</param>
/// <param name="AtLow">The depth there; negative where a gap opens.</param>
/// <param name="AtHigh">The depth at the other end.</param>
internal readonly record struct NeighbourLook(double Low, double High, double AtLow, double AtHigh)
{
    public bool Faces => High > Low;

    public bool Closed => Faces && AtLow >= 0.0 && AtHigh >= 0.0;

    /// <summary>Looks along or against the right (or up) direction of a panel at its neighbour.</summary>
    /// <param name="panels">All panels.</param>
    /// <param name="from">The panel looked from.</param>
    /// <param name="to">Its neighbour.</param>
    /// <param name="alongWidth">True for neighbours in a row.</param>
    /// <param name="sign">1 when the neighbour lies to the right or above, -1 otherwise.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static NeighbourLook At(
        DrawnPanels panels,
        int from,
        int to,
        bool alongWidth,
        double sign
    )
    {
        var viewer = panels[from];
        var other = panels[to];
        var (w, h) = (panels.HalfWidth, panels.HalfHeight);
        var p = viewer.See(alongWidth ? other.Place(-sign * w, h) : other.Place(w, -sign * h));
        var q = viewer.See(alongWidth ? other.Place(-sign * w, -h) : other.Place(-w, -sign * h));
        if (p.Z <= 0.0 || q.Z <= 0.0)
        {
            return default;
        }

        var (depth, side) = alongWidth ? (w, h) : (h, w);
        var (out1, side1) = alongWidth
            ? (sign * p.X / p.Z, p.Y / p.Z)
            : (sign * p.Y / p.Z, p.X / p.Z);
        var (out2, side2) = alongWidth
            ? (sign * q.X / q.Z, q.Y / q.Z)
            : (sign * q.Y / q.Z, q.X / q.Z);
        var low = Math.Max(-side, Math.Min(side1, side2));
        var high = Math.Min(side, Math.Max(side1, side2));
        if (high <= low)
        {
            return default;
        }

        var slope = (out2 - out1) / (side2 - side1);
        return new(
            low,
            high,
            depth - out1 - (slope * (low - side1)),
            depth - out1 - (slope * (high - side1))
        );
    }

    /// <summary>Puts the figure between the two sides, where they have parted, into pieces to cut from.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Open(
        CameraAxes viewer,
        bool alongWidth,
        double sign,
        double halfDepth,
        ConvexPieces pieces
    )
    {
        if (AtLow < 0.0 && AtHigh < 0.0)
        {
            pieces.Start(
                Place(halfDepth, Low),
                Place(halfDepth - AtLow, Low),
                Place(halfDepth - AtHigh, High),
                Place(halfDepth, High)
            );
            return;
        }

        // The sides cross: a wedge from the crossing to the open end.
        var crossing = Low + ((High - Low) * AtLow / (AtLow - AtHigh));
        var (open, depth) = AtLow < 0.0 ? (Low, AtLow) : (High, AtHigh);
        pieces.Start(
            Place(halfDepth, crossing),
            Place(halfDepth, open),
            Place(halfDepth - depth, open)
        );

        Vector3D Place(double outward, double side) =>
            alongWidth ? viewer.Place(sign * outward, side) : viewer.Place(side, sign * outward);
    }
}
