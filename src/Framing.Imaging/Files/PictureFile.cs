using Framing.Fits;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>The door to picture files: what they are, their samples, their pictures.</summary>
/// <remarks>
/// <para>
/// FITS, PNG, JPEG and TIFF files are read, FITS also packed; other kinds are named and refused. The first bytes tell the
/// kind, not the name. JPEG files are decoded in a process of their own.
/// JPEG and TIFF are turned as their orientation says.
/// </para>
/// <para>
/// A FITS file of any length is read through a small buffer and averaged down while it is read; so are JPEG and
/// TIFF files of up to 120 million pixels (40 million of a progressive JPEG). A PNG of as many is decoded whole.
/// </para>
/// </remarks>
public static class PictureFile
{
    /// <summary>Pixels of a picture that are held in memory unless the caller says otherwise: 4 bytes each and a plane.</summary>
    public const int UsualMostPixels = 30_000_000;

    /// <summary>Says what a picture file is, without reading its samples.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="UnreadableFileException">It cannot be read, or it is no picture.</exception>
    public static PictureFacts Inspect(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        using var source = PictureSource.Open(path);
        return FactsOf(source);
    }

    /// <summary>Reads a picture and its place on the sky.</summary>
    /// <param name="path">The file.</param>
    /// <param name="mostPixels">
    /// The most pixels to hold, 1 or more. A larger picture is averaged down by a whole factor, see
    /// <see cref="Picture.Reduction"/>.
    /// </param>
    /// <returns>The picture.</returns>
    /// <exception cref="UnreadableFileException">It cannot be read, or it is no picture.</exception>
    public static Picture Read(string path, int mostPixels = UsualMostPixels)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostPixels, 1);
        using var source = PictureSource.Open(path);
        var factor = BlockAverage.FactorFor(source.Width, source.Height, mostPixels);
        return source.Read(factor, SolutionFinder.Find(source, out _).Coordinates);
    }

    /// <summary>Reads a picture as <see cref="Read(string, int)"/> does, and tells beforehand what it is: one opening serves both.</summary>
    /// <param name="path">The file.</param>
    /// <param name="seen">Takes the facts before any sample is read; what it throws ends the reading.</param>
    /// <param name="mostPixels">The most pixels to hold, 1 or more.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="UnreadableFileException">It cannot be read, or it is no picture.</exception>
    public static Picture Read(
        string path,
        Action<PictureFacts> seen,
        int mostPixels = UsualMostPixels
    )
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostPixels, 1);
        using var source = PictureSource.Open(path);
        var facts = FactsOf(source);
        seen(facts);
        var factor = BlockAverage.FactorFor(source.Width, source.Height, mostPixels);
        return source.Read(factor, facts.Coordinates);
    }

    /// <summary>Reads the samples of the pixel in which a place lies.</summary>
    /// <param name="path">The file.</param>
    /// <param name="pixel">The place, as FITS counts and as the file's axes run (all but FITS from the bottom left as shown).</param>
    /// <returns>One sample a plane, alpha last where there is one; nothing when the place lies outside the picture.</returns>
    /// <exception cref="UnreadableFileException">It cannot be read, or it is no picture.</exception>
    public static IReadOnlyList<SampleValue> ReadSamples(string path, PixelPosition pixel)
    {
        ArgumentNullException.ThrowIfNull(path);
        using var source = PictureSource.Open(path);
        var column = Math.Floor(pixel.X - 0.5);
        var row = Math.Floor(pixel.Y - 0.5);
        return column >= 0.0 && column < source.Width && row >= 0.0 && row < source.Height
            ? source.ReadSamples((int)column, (int)row)
            : [];
    }

    private static PictureFacts FactsOf(PictureSource source)
    {
        var warnings = new List<string>(source.Warnings);
        var rig = source.Rig ?? RigFacts.Read(source.Header, warnings);
        var solution = SolutionFinder.Find(source, out var besides);
        warnings.AddRange(solution.Warnings);
        var sky = solution.Coordinates is { } coordinates
            ? SkyFacts.Of(coordinates, source.Width, source.Height, source.RowsTopDown)
            : null;
        if (solution.Coordinates is not null && sky is null)
        {
            warnings.Add(
                "The middle of the picture shows no sky: it lies off the map of its projection."
            );
        }

        if (source.RowsTopDown)
        {
            warnings.Add(
                "ROWORDER = TOP-DOWN: the picture is shown with its first row on top; its pixels are counted as stored."
            );
        }

        if (sky?.DisplayedMirrored == true)
        {
            warnings.Add("The picture is shown mirrored against the sky as the eye sees it.");
        }

        return new()
        {
            Name = source.Name,
            Format = source.Format,
            Packing = source.Packing,
            Width = source.Width,
            Height = source.Height,
            Planes = source.Planes,
            HasAlpha = source.HasAlpha,
            SampleFormat = source.SampleFormat,
            RowsTopDown = source.RowsTopDown,
            Rig = rig,
            Solution = solution,
            SolutionFile = besides,
            Sky = sky,
            Warnings = warnings,
        };
    }
}
