using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Finds the figures near a place: their middles in cubes of space, a cube as wide as the widest figure.</summary>
internal sealed class FigureIndex
{
    private readonly ConvexFigures figures;
    private readonly double widest;
    private readonly double cube;
    private readonly Vector3D corner;
    private readonly (int X, int Y, int Z) size;
    private readonly int[] starts;
    private readonly int[] members;

    public FigureIndex(ConvexFigures figures)
    {
        this.figures = figures;
        var (low, high) = (new Vector3D(2.0, 2.0, 2.0), new Vector3D(-2.0, -2.0, -2.0));
        foreach (var middle in figures.Middles)
        {
            low = new(
                Math.Min(low.X, middle.X),
                Math.Min(low.Y, middle.Y),
                Math.Min(low.Z, middle.Z)
            );
            high = new(
                Math.Max(high.X, middle.X),
                Math.Max(high.Y, middle.Y),
                Math.Max(high.Z, middle.Z)
            );
        }

        foreach (var reach in figures.Reaches)
        {
            widest = Math.Max(widest, reach);
        }

        corner = low;
        var span = high - low;

        // As many cubes as the figures need, and not many more than there are figures.
        var most = (16L * figures.Count) + 64L;
        for (cube = 2.0 * Math.Max(widest, 1e-9); ; cube *= 1.5)
        {
            double x = Math.Floor(span.X / cube) + 1.0,
                y = Math.Floor(span.Y / cube) + 1.0,
                z = Math.Floor(span.Z / cube) + 1.0;
            if (figures.Count == 0 || x * y * z <= most)
            {
                size = figures.Count == 0 ? (1, 1, 1) : ((int)x, (int)y, (int)z);
                break;
            }
        }

        starts = new int[(size.X * size.Y * size.Z) + 1];
        members = new int[figures.Count];
        var cubes = new int[figures.Count];
        for (var i = 0; i < cubes.Length; i++)
        {
            cubes[i] = CubeOf(figures.Middles[i]);
            starts[cubes[i] + 1]++;
        }

        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        var filled = starts.AsSpan(0, starts.Length - 1).ToArray();
        for (var i = 0; i < cubes.Length; i++)
        {
            members[filled[cubes[i]]++] = i;
        }
    }

    /// <summary>Finds the figures that may reach into a cap, in no order.</summary>
    /// <param name="middle">The middle of the cap, a unit vector.</param>
    /// <param name="reach">The chord from there to its rim.</param>
    /// <param name="found">Takes the numbers of the figures; what was in it is dropped.</param>
    public void Near(Vector3D middle, double reach, List<int> found)
    {
        found.Clear();
        var far = reach + widest;
        var (x0, x1) = Range(middle.X - corner.X, far, size.X);
        var (y0, y1) = Range(middle.Y - corner.Y, far, size.Y);
        var (z0, z1) = Range(middle.Z - corner.Z, far, size.Z);
        var middles = figures.Middles;
        var reaches = figures.Reaches;
        for (var x = x0; x <= x1; x++)
        {
            for (var y = y0; y <= y1; y++)
            {
                var row = ((x * size.Y) + y) * size.Z;
                for (var m = starts[row + z0]; m < starts[row + z1 + 1]; m++)
                {
                    var away = middles[members[m]] - middle;
                    var together = reach + reaches[members[m]] + 1e-14;
                    if (away.Dot(away) <= together * together)
                    {
                        found.Add(members[m]);
                    }
                }
            }
        }
    }

    private (int From, int To) Range(double at, double far, int count) =>
        (
            (int)Math.Clamp(Math.Floor((at - far) / cube), 0.0, count - 1.0),
            (int)Math.Clamp(Math.Floor((at + far) / cube), 0.0, count - 1.0)
        );

    private int CubeOf(Vector3D middle)
    {
        var at = middle - corner;
        int x = Math.Min((int)(at.X / cube), size.X - 1),
            y = Math.Min((int)(at.Y / cube), size.Y - 1),
            z = Math.Min((int)(at.Z / cube), size.Z - 1);
        return (((x * size.Y) + y) * size.Z) + z;
    }
}
