namespace Framing.Catalogue;

/// <summary>Which of the stars in a part of the sky are wanted.</summary>
/// <remarks>The default is all of them, at their places of 2000.0.</remarks>
public sealed record StarSelection
{
    /// <summary>Every star, at its place of 2000.0.</summary>
    public static StarSelection All { get; } = new();

    /// <summary>The faintest V wanted, itself included; infinity for no limit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number.</exception>
    public double FaintestMagnitude
    {
        get;
        init =>
            field = double.IsNaN(value)
                ? throw new ArgumentOutOfRangeException(
                    nameof(value),
                    value,
                    "A magnitude is a number."
                )
                : value;
    } = double.PositiveInfinity;

    /// <summary>The most stars wanted; the brightest ones are given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below zero.</exception>
    public int MostStars
    {
        get;
        init =>
            field =
                value >= 0
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(value),
                        value,
                        "A number of stars is not negative."
                    );
    } = int.MaxValue;

    /// <summary>The epoch, as a Julian year, at which a star has to stand inside; 1000 to 3000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1000 to 3000: motions along straight lines are not good for longer.</exception>
    public double JulianYear
    {
        get;
        init =>
            field = value is >= 1000.0 and <= 3000.0
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(value),
                    value,
                    "An epoch lies between the years 1000 and 3000."
                );
    } = CatalogueStar.CatalogueJulianYear;
}
