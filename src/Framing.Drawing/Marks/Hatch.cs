namespace Framing.Drawing;

/// <summary>Slanting lines over an area.</summary>
internal static class Hatch
{
    /// <summary>Lines from lower left to upper right over the area inside closed rings (odd number of crossings).</summary>
    /// <param name="rings">The rings.</param>
    /// <param name="frame">Lines are made within this box only.</param>
    /// <param name="spacing">The distance of neighbouring lines in pixels.</param>
    public static Lines Over(Lines rings, Box frame, double spacing)
    {
        // Along each line x + y = c the crossings with the rings are sorted by x - y and joined in pairs.
        var step = spacing * Math.Sqrt(2.0);
        var (low, high) = (double.MaxValue, double.MinValue);
        rings.ForEachPiece(
            (from, _) =>
            {
                low = Math.Min(low, from.X + from.Y);
                high = Math.Max(high, from.X + from.Y);
            }
        );
        low = Math.Max(low, frame.Left + frame.Top);
        high = Math.Min(high, frame.Right + frame.Bottom);
        var hatch = new Lines();
        var crossings = new List<double>();
        for (var c = Math.Ceiling(low / step) * step; c <= high; c += step)
        {
            crossings.Clear();
            var sum = c;
            rings.ForEachPiece(
                (start, end) =>
                {
                    var (from, to) = (start.X + start.Y, end.X + end.Y);
                    if (from <= sum != to <= sum)
                    {
                        var place = start + ((end - start) * ((sum - from) / (to - from)));
                        crossings.Add(place.X - place.Y);
                    }
                }
            );
            crossings.Sort();
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                hatch.Add([At(c, crossings[i]), At(c, crossings[i + 1])], closed: false);
            }
        }

        return hatch;
    }

    private static PicturePoint At(double sum, double difference) =>
        new((sum + difference) / 2.0, (sum - difference) / 2.0);
}
