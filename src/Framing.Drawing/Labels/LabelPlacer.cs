namespace Framing.Drawing;

/// <summary>Finds room for labels: none ever meets another, or anything that has been marked as taken.</summary>
/// <remarks>
/// Labels are placed one after another, the most important first: <see cref="Begin"/>, then <see cref="Offer"/> for every
/// place that would do, then <see cref="Take()"/>. Of the places offered, those that meet something taken or leave the room
/// are out; of the rest the one with the least cost is taken: its own cost plus what it would cover of lines and stars.
/// </remarks>
internal sealed class LabelPlacer
{
    private const double LineCost = 1.0;
    private const double DiscCost = 2.5;
    private const double CellSize = 64.0;

    private readonly double gap;
    private readonly List<Box> taken = [];
    private readonly List<Obstacle>?[] cells;
    private readonly int columns;
    private readonly int rows;
    private Box? best;
    private double least;

    /// <summary>Makes a placer.</summary>
    /// <param name="room">Labels stay inside.</param>
    /// <param name="gap">What is left free around each, in pixels.</param>
    public LabelPlacer(Box room, double gap)
    {
        Room = room;
        this.gap = gap;
        columns = Math.Max(1, (int)Math.Ceiling(room.Width / CellSize));
        rows = Math.Max(1, (int)Math.Ceiling(room.Height / CellSize));
        cells = new List<Obstacle>?[columns * rows];
    }

    public Box Room { get; }

    /// <summary>Nothing may be placed here any more.</summary>
    public void Take(Box box) => taken.Add(box);

    /// <summary>Labels avoid covering these lines where they can.</summary>
    public void Avoid(Lines shapes) => shapes.ForEachPiece(AvoidLine);

    /// <summary>Labels avoid covering this star where they can.</summary>
    public void Avoid(Dot star) =>
        Add(
            new(star.Middle, star.Middle, star.Radius),
            Box.Around(star.Middle, 2.0 * star.Radius, 2.0 * star.Radius)
        );

    /// <summary>True when a box could be taken.</summary>
    public bool IsFree(Box box)
    {
        if (!Room.Holds(box))
        {
            return false;
        }

        var wide = box.Grown(gap);
        foreach (var other in taken)
        {
            if (other.Meets(wide))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Starts the search for a place.</summary>
    /// <param name="most">Places that cost as much in all are not taken.</param>
    public void Begin(double most = double.MaxValue) => (best, least) = (null, most);

    /// <summary>Offers a place.</summary>
    /// <param name="place">The place.</param>
    /// <param name="cost">The cost of choosing it; the first offered wins among equals.</param>
    public void Offer(Box place, double cost)
    {
        if (cost >= least || !IsFree(place))
        {
            return;
        }

        var all = cost + Covered(place, least - cost);
        if (all < least)
        {
            (best, least) = (place, all);
        }
    }

    /// <summary>Takes the best place offered since <see cref="Begin"/>; null where there is no room.</summary>
    public Box? Take()
    {
        if (best is { } found)
        {
            Take(found);
        }

        return best;
    }

    private double Covered(Box place, double enough)
    {
        var cost = 0.0;
        var (left, right) = (Column(place.Left), Column(place.Right));
        var (top, bottom) = (Row(place.Top), Row(place.Bottom));
        for (var row = top; row <= bottom; row++)
        {
            for (var column = left; column <= right; column++)
            {
                if (cells[(row * columns) + column] is not { } cell)
                {
                    continue;
                }

                foreach (var obstacle in cell)
                {
                    // What stands in several cells counts in each: a label across a cell's border is wide enough to bear it.
                    cost += obstacle.Cost(place);
                    if (cost >= enough)
                    {
                        return cost;
                    }
                }
            }
        }

        return cost;
    }

    private void AvoidLine(PicturePoint from, PicturePoint to)
    {
        var around = new Box(
            Math.Min(from.X, to.X),
            Math.Min(from.Y, to.Y),
            Math.Max(from.X, to.X),
            Math.Max(from.Y, to.Y)
        );
        Add(new(from, to, 0.0), around);
    }

    private void Add(Obstacle obstacle, Box around)
    {
        if (!Room.Grown(1.0).Meets(around.Grown(1.0)))
        {
            return;
        }

        for (var row = Row(around.Top); row <= Row(around.Bottom); row++)
        {
            for (var column = Column(around.Left); column <= Column(around.Right); column++)
            {
                var cell = new Box(
                    Room.Left + (column * CellSize),
                    Room.Top + (row * CellSize),
                    Room.Left + ((column + 1) * CellSize),
                    Room.Top + ((row + 1) * CellSize)
                );
                if (obstacle.Cost(cell) > 0.0)
                {
                    (cells[(row * columns) + column] ??= []).Add(obstacle);
                }
            }
        }
    }

    private int Column(double x) =>
        Math.Clamp((int)Math.Floor((x - Room.Left) / CellSize), 0, columns - 1);

    private int Row(double y) =>
        Math.Clamp((int)Math.Floor((y - Room.Top) / CellSize), 0, rows - 1);

    /// <summary>A line, or with a radius a star.</summary>
    private sealed class Obstacle(PicturePoint from, PicturePoint to, double radius)
    {
        public double Cost(Box place) =>
            radius > 0.0
                ? (place.DistanceTo(from) < radius ? DiscCost : 0.0)
                : (place.IsCrossedBy(from, to) ? LineCost : 0.0);
    }
}
