using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>Finds the cells of the star table that a cone may touch.</summary>
internal static class SkyCells
{
    // Far above rounding, far below the size of a cell.
    public const double SlackDegrees = 1e-7;

    /// <summary>The cells that may hold a star inside a cone; empty cells are left out.</summary>
    /// <param name="table">The table.</param>
    /// <param name="middle">The middle of the cone.</param>
    /// <param name="radius">Its radius.</param>
    /// <returns>The cells, south to north and west to east; every star of the cone is in one of them.</returns>
    public static List<StarCell> Touching(StarTable table, SkyDirection middle, Angle radius)
    {
        var found = new List<StarCell>();
        var declination = middle.Declination.Degrees;
        var reach = radius.Degrees + SlackDegrees;
        var lowest = Band(table, declination - reach);
        var highest = Band(table, declination + reach);
        var half = HalfWidth(declination, reach);
        for (var band = lowest; band <= highest; band++)
        {
            var first = table.FirstCell(band);
            var count = table.FirstCell(band + 1) - first;
            var west = (middle.RightAscension.Degrees - half) / 360.0 * count;
            var east = (middle.RightAscension.Degrees + half) / 360.0 * count;
            var from = (int)Math.Floor(west);
            var number = Math.Min(count, (int)Math.Floor(east) - from + 1);
            if (half >= 180.0)
            {
                (from, number) = (0, count);
            }

            for (var i = 0; i < number; i++)
            {
                // Right ascension 0h lies in the middle of many cones.
                var cell = table.Cell(band, first + ((((from + i) % count) + count) % count));
                if (cell.End > cell.First)
                {
                    found.Add(cell);
                }
            }
        }

        return found;
    }

    private static int Band(StarTable table, double declination) =>
        Math.Clamp(
            (int)Math.Floor((declination + 90.0) / table.BandDegrees),
            0,
            table.BandCount - 1
        );

    /// <summary>How far a cone reaches in right ascension to either side; all the way round if a pole is inside.</summary>
    public static double HalfWidth(double declination, double reach)
    {
        if (Math.Abs(declination) + reach >= 90.0)
        {
            return 180.0;
        }

        // A meridian touches the cone where sin(width) = sin(radius) / cos(declination).
        var ratio =
            Math.Sin(Angle.FromDegrees(reach).Radians)
            / Math.Cos(Angle.FromDegrees(declination).Radians);
        return Angle.FromRadians(Math.Asin(Math.Min(1.0, ratio))).Degrees + SlackDegrees;
    }
}
