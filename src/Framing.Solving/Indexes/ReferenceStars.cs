using System.Runtime.CompilerServices;
using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Solving;

/// <summary>The stars of the sky that frames are matched with, brightest first.</summary>
/// <remarks>
/// Made once and asked often; safe for several threads at once. What a search needs of the quads of these stars is made
/// when it is first asked for.
/// </remarks>
public sealed class ReferenceStars
{
    private const double RadiansPerDegree = Math.PI / 180.0;
    private const double RadiansPerMas = RadiansPerDegree / 3.6e6;

    private static readonly Lazy<ReferenceStars> TheEmbedded = new(() =>
        new ReferenceStars(StarCatalogue.Embedded.AllRows(), 4.0 * Math.PI)
    );

    private readonly float[] east;
    private readonly float[] north;
    private readonly Lazy<StarLevels> levels;
    private readonly Lazy<QuadIndex>[] indexes;

    /// <summary>Takes stars that are in order already.</summary>
    /// <param name="rows">The stars, brightest first.</param>
    /// <param name="steradians">How much of the sky holds them.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal ReferenceStars(StarRow[] rows, double steradians)
    {
        Count = rows.Length;
        RightAscension = new double[Count];
        Declination = new double[Count];
        Vectors = new Vector3D[Count];
        Magnitudes = new float[Count];
        east = new float[Count];
        north = new float[Count];
        for (var star = 0; star < Count; star++)
        {
            var row = rows[star];
            var rightAscension = row.RightAscensionDegrees * RadiansPerDegree;
            var declination = row.DeclinationDegrees * RadiansPerDegree;
            var (sinRa, cosRa) = Math.SinCos(rightAscension);
            var (sinDec, cosDec) = Math.SinCos(declination);
            RightAscension[star] = rightAscension;
            Declination[star] = declination;
            Vectors[star] = new(cosDec * cosRa, cosDec * sinRa, sinDec);
            Magnitudes[star] = row.VMagnitude;
            east[star] = row.EastMasPerYear;
            north[star] = row.NorthMasPerYear;
        }

        levels = new(() => new StarLevels(RightAscension, Declination, steradians));
        indexes =
        [
            .. QuadLevel
                .For(Count)
                .Select(level => new Lazy<QuadIndex>(() => QuadIndex.Build(this, level))),
        ];
    }

    /// <summary>The stars of the embedded catalogue.</summary>
    public static ReferenceStars Embedded => TheEmbedded.Value;

    /// <summary>The stars of a table, with those of the embedded catalogue in the same part of the sky.</summary>
    /// <param name="table">The table, in any order.</param>
    /// <returns>The stars; they know nothing of the rest of the sky.</returns>
    /// <exception cref="ArgumentException">A star has no place, or a magnitude that is not finite.</exception>
    public static ReferenceStars FromTable(IReadOnlyList<TableStar> table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var rows = new StarRow[table.Count];
        for (var star = 0; star < rows.Length; star++)
        {
            var entry = table[star];
            if (entry.Direction.IsDefault || !double.IsFinite(entry.Magnitude))
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Star {star} of the table has no place or no magnitude: {entry.Direction}, {entry.Magnitude}."
                    ),
                    nameof(table)
                );
            }

            var motion = entry.Motion ?? default;
            rows[star] = new(
                entry.Direction.RightAscension.Degrees,
                entry.Direction.Declination.Degrees,
                (float)(1000.0 * motion.RightAscensionCosDeclination.Arcseconds),
                (float)(1000.0 * motion.Declination.Arcseconds),
                (float)entry.Magnitude
            );
        }

        var (joined, steradians) = TablePatch.Join(rows, StarCatalogue.Embedded.AllRows());
        return new(joined, steradians);
    }

    /// <summary>Makes ready what a search needs, for instance while a frame is being read.</summary>
    /// <param name="wholeSky">True for a search of the whole sky; false for one with a hint.</param>
    public void Prepare(bool wholeSky)
    {
        _ = Levels;
        if (wholeSky && IndexCount > 0)
        {
            _ = Index(0);
        }
    }

    /// <summary>How many stars there are.</summary>
    public int Count { get; }

    internal double[] RightAscension { get; }

    internal double[] Declination { get; }

    internal Vector3D[] Vectors { get; }

    internal float[] Magnitudes { get; }

    internal StarLevels Levels => levels.Value;

    /// <summary>How many indexes of quads there are; the first ones are of the brightest stars.</summary>
    internal int IndexCount => indexes.Length;

    internal QuadIndex Index(int number) => indexes[number].Value;

    /// <summary>A star as plain numbers.</summary>
    internal StarRow Row(int star) =>
        new(
            RightAscension[star] / RadiansPerDegree,
            Declination[star] / RadiansPerDegree,
            east[star],
            north[star],
            Magnitudes[star]
        );

    /// <summary>The place of a star at an epoch, as a Julian year.</summary>
    internal SkyDirection At(int star, double julianYear)
    {
        var vector = Vectors[star];
        var years = (julianYear - CatalogueStar.CatalogueJulianYear) * RadiansPerMas;
        if (east[star] == 0f && north[star] == 0f)
        {
            return SkyDirection.FromVector(vector);
        }

        var (sinRa, cosRa) = Math.SinCos(RightAscension[star]);
        var toEast = new Vector3D(-sinRa, cosRa, 0.0);
        var toNorth = vector.Cross(toEast);
        return SkyDirection.FromVector(
            vector + (toEast * (east[star] * years)) + (toNorth * (north[star] * years))
        );
    }
}
