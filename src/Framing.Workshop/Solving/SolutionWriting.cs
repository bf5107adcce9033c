using System.Text;
using Framing.Fits;
using Framing.Imaging;

namespace Framing.Workshop;

/// <summary>Writes the solution of a frame where every command finds it.</summary>
public static class SolutionWriting
{
    /// <summary>Writes it into the header of a FITS frame, and beside every other picture.</summary>
    /// <param name="path">The frame.</param>
    /// <param name="result">Its solution.</param>
    /// <returns>The file that was written.</returns>
    /// <exception cref="ArgumentException">It was not solved.</exception>
    /// <exception cref="InputException">It cannot be written; everything stays as it was.</exception>
    /// <exception cref="UnreadableFileException">The frame's header cannot take it.</exception>
    public static string Write(string path, SolveResult result)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(result);
        if (result.Coordinates is not { } coordinates)
        {
            throw new ArgumentException("The frame was not solved.", nameof(result));
        }

        var (width, height) = (result.Facts.Width, result.Facts.Height);
        var cards = new FitsHeaderBuilder().AddSolution(coordinates, width, height);
        if (result.Facts.Format == PictureFormat.Fits && result.Facts.SolutionFile is null)
        {
            WriteFaults.Guard(path, () => SolutionUpdate.Write(path, cards));
            return path;
        }

        // Cards placed beside a frame go before its own, so these are the ones to replace.
        var beside =
            result.Facts.SolutionFile is { } there && IsText(there) ? there : path + ".wcs.txt";
        cards.Add("IMAGEW", width, "columns of the picture").Add("IMAGEH", height, "rows of it");
        OutputFile.Write(beside, Encoding.ASCII.GetBytes(cards.ToText()));
        return beside;
    }

    private static bool IsText(string path) =>
        path.EndsWith(".wcs.txt", StringComparison.OrdinalIgnoreCase);
}
