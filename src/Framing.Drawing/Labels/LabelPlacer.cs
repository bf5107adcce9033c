namespace Framing.Drawing;

/// <summary>Finds room for labels: none ever meets another, or anything that has been marked as taken.</summary>
/// <remarks>
/// Labels are placed one after another, the most important first. Of the places offered, those that meet something taken or
/// leave the room are out; of the rest the one with the least cost is taken: its own cost plus what it would cover of lines
/// and bright stars.
/// </remarks>
internal sealed class LabelPlacer(Box room, double gap)
{
    private const double LineCost = 1.0;
    private const double DiscCost = 2.5;

    private readonly List<Box> taken = [];
    private readonly List<(PicturePoint From, PicturePoint To)> lines = [];
    private readonly List<(PicturePoint Middle, double Radius)> discs = [];

    public Box Room => room;

    /// <summary>Nothing may be placed here any more.</summary>
    public void Take(Box box) => taken.Add(box);

    /// <summary>Labels avoid covering these lines where they can.</summary>
    public void Avoid(Lines shapes)
    {
        foreach (var (points, closed) in shapes.Runs)
        {
            for (var i = 1; i < points.Length; i++)
            {
                AvoidLine(points[i - 1], points[i]);
            }

            if (closed)
            {
                AvoidLine(points[^1], points[0]);
            }
        }
    }

    /// <summary>Labels avoid covering this star where they can.</summary>
    public void Avoid(PicturePoint middle, double radius) => discs.Add((middle, radius));

    /// <summary>True when a box could be taken.</summary>
    public bool IsFree(Box box)
    {
        var wide = box.Grown(gap);
        return room.Holds(box) && !taken.Exists(other => other.Meets(wide));
    }

    /// <summary>Takes the best of some places.</summary>
    /// <param name="places">The places offered, each with the cost of choosing it; the first wins among equals.</param>
    /// <param name="most">Places that cost more in all are not taken.</param>
    /// <returns>The place taken, or null where there is no room.</returns>
    public Box? Place(IEnumerable<(Box Place, double Cost)> places, double most = double.MaxValue)
    {
        Box? best = null;
        var least = most;
        foreach (var (place, own) in places)
        {
            if (own >= least || !IsFree(place))
            {
                continue;
            }

            var cost = own + Covered(place, least - own);
            if (cost < least)
            {
                (best, least) = (place, cost);
            }
        }

        if (best is { } found)
        {
            Take(found);
        }

        return best;
    }

    private double Covered(Box place, double enough)
    {
        var cost = 0.0;
        foreach (var (middle, radius) in discs)
        {
            if (place.DistanceTo(middle) < radius)
            {
                cost += DiscCost;
                if (cost >= enough)
                {
                    return cost;
                }
            }
        }

        foreach (var (from, to) in lines)
        {
            if (place.IsCrossedBy(from, to))
            {
                cost += LineCost;
                if (cost >= enough)
                {
                    return cost;
                }
            }
        }

        return cost;
    }

    private void AvoidLine(PicturePoint from, PicturePoint to)
    {
        if (room.IsCrossedBy(from, to))
        {
            lines.Add((from, to));
        }
    }
}
