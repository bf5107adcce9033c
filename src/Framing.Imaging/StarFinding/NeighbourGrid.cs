namespace Framing.Imaging;

/// <summary>Places with a reach of their own: tells whether a new place falls within the reach of one.</summary>
internal sealed class NeighbourGrid(double cell)
{
    private readonly Dictionary<
        (int, int),
        List<(double X, double Y, double Reach, int Mark)>
    > cells = [];

    public void Add(double x, double y, double reach, int mark = 0)
    {
        // A place is entered in every cell that its reach touches.
        for (var column = At(x - reach); column <= At(x + reach); column++)
        {
            for (var row = At(y - reach); row <= At(y + reach); row++)
            {
                if (!cells.TryGetValue((column, row), out var list))
                {
                    cells[(column, row)] = list = [];
                }

                list.Add((x, y, reach, mark));
            }
        }
    }

    public bool HoldsWithin(double x, double y) =>
        cells.TryGetValue((At(x), At(y)), out var list)
        && list.Exists(place => double.Hypot(place.X - x, place.Y - y) < place.Reach);

    /// <summary>The marks of the other places within whose reach a place falls.</summary>
    public List<int> Around(double x, double y, int self) =>
        cells.TryGetValue((At(x), At(y)), out var list)
            ? list.FindAll(place =>
                    place.Mark != self && double.Hypot(place.X - x, place.Y - y) < place.Reach
                )
                .ConvertAll(place => place.Mark)
            : [];

    private int At(double value) => (int)Math.Floor(value / cell);
}
