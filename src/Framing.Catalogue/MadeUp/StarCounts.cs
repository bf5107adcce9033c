using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>How many stars of each brightness stand in a square degree, from V 10 to V 16, by galactic longitude and latitude.</summary>
/// <remarks>
/// <para>
/// To V 11 these are real counts (Tycho-2); from there a model of the Milky Way carries them on. Layout, sources and how
/// good they are: tests/reference/star-counts.
/// </para>
/// <para>Between the nodes logarithms are interpolated, straight in longitude and latitude.</para>
/// </remarks>
internal sealed class StarCounts
{
    private static readonly Lazy<StarCounts> TheEmbedded = new(() => new StarCounts());

    private readonly int longitudes;
    private readonly double[] latitudes;
    private readonly double[] logarithms;
    private readonly double[] colourLimits;
    private readonly double[][] colours;
    private readonly TableSection limits;

    private StarCounts()
    {
        var table = EmbeddedTable.Open("star-counts.bin", "FRCOUNT1"u8);
        var parameters = table.Section(0);
        longitudes = parameters.Int32(1);
        Bins = parameters.Int32(2);
        FirstMagnitude = parameters.Int32(5) / 100.0;
        BinWidth = parameters.Int32(6) / 100.0;

        latitudes = new double[parameters.Int32(0)];
        var nodes = table.Section(1);
        for (var i = 0; i < latitudes.Length; i++)
        {
            latitudes[i] = nodes.Int32(i) / 1000.0;
        }

        logarithms = new double[latitudes.Length * longitudes * Bins];
        var counts = table.Section(2);
        for (var i = 0; i < logarithms.Length; i++)
        {
            logarithms[i] = counts.Int16(i) / 1000.0 * Math.Log(10.0);
        }

        var inABand = parameters.Int32(4);
        var section = table.Section(3);
        colourLimits = new double[parameters.Int32(3)];
        colours = new double[colourLimits.Length][];
        for (int band = 0, at = 0; band < colours.Length; band++)
        {
            colourLimits[band] = section.Int16(at++) / 100.0;
            colours[band] = new double[inABand];
            for (var i = 0; i < inABand; i++)
            {
                colours[band][i] = section.Int16(at++) / 100.0;
            }
        }

        limits = table.Section(4);
    }

    /// <summary>The counts that are part of the program.</summary>
    public static StarCounts Embedded => TheEmbedded.Value;

    /// <summary>How many bins of magnitude there are.</summary>
    public int Bins { get; }

    /// <summary>Where the first bin begins.</summary>
    public double FirstMagnitude { get; }

    /// <summary>How many magnitudes a bin spans.</summary>
    public double BinWidth { get; }

    /// <summary>Where the last bin ends.</summary>
    public double LastMagnitude => FirstMagnitude + (Bins * BinWidth);

    /// <summary>Stars per square degree in every bin.</summary>
    /// <param name="place">Where.</param>
    /// <param name="found">Receives them: the first at its start, the others in equal steps behind.</param>
    /// <param name="step">The step.</param>
    public void PerSquareDegree(GalacticCoordinates place, Span<double> found, int step)
    {
        var latitude = place.Latitude.Degrees;
        var row = 0;
        while (row < latitudes.Length - 2 && latitude >= latitudes[row + 1])
        {
            row++;
        }

        var up = (latitude - latitudes[row]) / (latitudes[row + 1] - latitudes[row]);
        var along = place.Longitude.Wrapped.Degrees / 360.0 * longitudes;
        var west = Math.Min((int)along, longitudes - 1);
        var east = (west + 1) % longitudes;
        var part = along - west;
        for (var bin = 0; bin < Bins; bin++)
        {
            var south = Mix(At(row, west, bin), At(row, east, bin), part);
            var north = Mix(At(row + 1, west, bin), At(row + 1, east, bin), part);
            found[bin * step] = Math.Exp(Mix(south, north, up));
        }
    }

    /// <summary>B-V of stars at a galactic latitude, from blue to red: as many stars between any two neighbours.</summary>
    public double[] Colours(Angle latitude)
    {
        var band = 0;
        while (band < colours.Length - 1 && Math.Abs(latitude.Degrees) > colourLimits[band])
        {
            band++;
        }

        return colours[band];
    }

    /// <summary>The V down to which the catalogue holds every star of a cell.</summary>
    public double CatalogueLimit(int cell) => FirstMagnitude + (limits.Bytes[cell] / 100.0);

    private static double Mix(double from, double to, double part) => from + ((to - from) * part);

    private double At(int row, int longitude, int bin) =>
        logarithms[(((row * longitudes) + longitude) * Bins) + bin];
}
