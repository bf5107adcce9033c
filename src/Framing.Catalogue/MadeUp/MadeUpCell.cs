using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>The made-up stars of one cell, one after another, bright ones first: always the same for the same seed.</summary>
/// <remarks>
/// Stars come like drops of rain, but along magnitude: the wait for the next one is random, at the rate of the densest
/// place of the cell, from where the catalogue ends. Each falls anywhere in the cell, and stays if chance agrees with the
/// density there. So a fainter limit only makes the list longer, and no star depends on what was asked for.
/// </remarks>
internal sealed class MadeUpCell
{
    // Four steps across the cell, 0.45 degrees: the counts change little over that.
    private const int Steps = 4;
    private const int Knots = Steps + 1;

    // Magnitudes are told to 0.01.
    private const double HalfStep = 0.005;

    private readonly StarCounts counts = StarCounts.Embedded;

    // Stars per square degree: bin after bin, in each the knots of the cell from south to north and west to east.
    private readonly double[] densities;
    private readonly double[] densest;
    private readonly double[] expected;
    private readonly double[] growth;
    private readonly double[] colours;
    private readonly double west;
    private readonly double width;
    private readonly double sinSouth;
    private readonly double sinSpan;
    private SeededRandom random;
    private int bin;
    private double waited;

    public MadeUpCell(ulong seed, int number)
    {
        var cell = CountingCells.Cell(number);
        random = new(seed, (ulong)number);
        west = Angle.FromDegrees(cell.WestDegrees).Radians;
        width = Angle.FromDegrees(cell.WidthDegrees).Radians;
        (sinSouth, sinSpan) = (cell.SinSouth, cell.SinNorth - cell.SinSouth);
        colours = counts.Colours(GalacticFrame.ToGalactic(cell.Middle).Latitude);

        densities = new double[counts.Bins * Knots * Knots];
        for (var knot = 0; knot < Knots * Knots; knot++)
        {
            var place = cell.At(knot % Knots / (double)Steps, knot / Knots / (double)Steps);
            counts.PerSquareDegree(
                GalacticFrame.ToGalactic(place),
                densities.AsSpan(knot),
                Knots * Knots
            );
        }

        densest = new double[counts.Bins];
        expected = new double[counts.Bins];
        growth = new double[counts.Bins];
        for (var i = 0; i < counts.Bins; i++)
        {
            foreach (var density in densities.AsSpan(i * Knots * Knots, Knots * Knots))
            {
                densest[i] = Math.Max(densest[i], density);
            }

            expected[i] = densest[i] * cell.SquareDegrees;
        }

        for (var i = 0; i < counts.Bins; i++)
        {
            // By what factor numbers grow across a bin: always well above 1.
            var from = Math.Min(i, counts.Bins - 2);
            growth[i] = Math.Max(1.01, densest[from + 1] / densest[from]);
        }

        var limit = (CountingCells.LimitOf(number) - counts.FirstMagnitude) / counts.BinWidth;
        bin = (int)limit;
        waited = expected[bin] * (Math.Pow(growth[bin], limit - bin) - 1.0) / (growth[bin] - 1.0);
    }

    /// <summary>The next star.</summary>
    /// <param name="faintest">The faintest V that is wanted.</param>
    /// <param name="star">The star.</param>
    /// <returns>False if there is none down to that magnitude; the cell is of no more use then.</returns>
    // A chart asks once, for tens of thousands of stars: there is no time to warm up.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool TryNext(double faintest, out MadeUpStar star)
    {
        while (true)
        {
            waited += random.Wait();
            while (bin < expected.Length && waited >= expected[bin])
            {
                waited -= expected[bin++];
            }

            var magnitude = bin < expected.Length ? Magnitude() : double.NaN;
            if (!(magnitude <= faintest + HalfStep))
            {
                star = default;
                return false;
            }

            var along = random.Share();
            var up = random.Share();
            var chance = random.Share();
            var colour = random.Share();
            if (chance * densest[bin] >= DensityAt(along * Steps, up * Steps))
            {
                continue;
            }

            star = new(
                Place(along, up),
                Math.Round(magnitude, 2),
                Math.Round(ColourAt(colour * (colours.Length - 1)), 2)
            );
            return star.VMagnitude <= faintest;
        }
    }

    private static double Mix(double from, double to, double part) => from + ((to - from) * part);

    /// <summary>Inside a bin numbers grow by an even factor.</summary>
    private double Magnitude()
    {
        var share = waited / expected[bin];
        var part = Math.Log(1.0 + (share * (growth[bin] - 1.0))) / Math.Log(growth[bin]);
        return counts.FirstMagnitude + (counts.BinWidth * (bin + part));
    }

    private double DensityAt(double along, double up)
    {
        var (i, j) = ((int)along, (int)up);
        var knot = (bin * Knots * Knots) + (j * Knots) + i;
        var south = Mix(densities[knot], densities[knot + 1], along - i);
        var north = Mix(densities[knot + Knots], densities[knot + Knots + 1], along - i);
        return Mix(south, north, up - j);
    }

    private double ColourAt(double along)
    {
        var i = (int)along;
        return Mix(colours[i], colours[i + 1], along - i);
    }

    private SkyDirection Place(double along, double up)
    {
        var sinDec = Math.Clamp(sinSouth + (sinSpan * up), -1.0, 1.0);
        var cosDec = Math.Sqrt((1.0 - sinDec) * (1.0 + sinDec));
        var (sin, cos) = Math.SinCos(west + (width * along));
        return SkyDirection.FromVector(new(cosDec * cos, cosDec * sin, sinDec));
    }
}
