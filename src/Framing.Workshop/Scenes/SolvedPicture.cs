using Framing.Drawing;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Opens pictures that have to know their place on the sky.</summary>
internal static class SolvedPicture
{
    /// <summary>Pixels of the file read for each pixel of the chart: more would be averaged away again.</summary>
    private const int Oversampling = 4;

    /// <summary>Where a picture with a solution lies.</summary>
    /// <param name="path">The file.</param>
    /// <returns>Its place on the sky.</returns>
    /// <exception cref="InputException">The file has no solution that can be used: it says what to do.</exception>
    public static SkyFacts PlaceOf(string path) => Place(path, PictureFile.Inspect(path));

    /// <summary>Reads a picture to lay under a chart, in one opening of its file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="size">The size of the chart's picture.</param>
    /// <param name="place">Receives its place on the sky.</param>
    /// <returns>The backdrop.</returns>
    /// <exception cref="InputException">The file has no solution that can be used; its samples were not read.</exception>
    public static PictureBackdrop ReadBackdrop(string path, PictureSize size, out SkyFacts place)
    {
        SkyFacts? found = null;
        var picture = PictureFile.Read(
            path,
            facts => found = Place(path, facts),
            Oversampling * size.Width * size.Height
        );
        place = found!;
        return new(picture);
    }

    /// <summary>Says so when a picture lies outside the chart.</summary>
    /// <param name="path">The picture.</param>
    /// <param name="place">Its place on the sky.</param>
    /// <param name="chart">The chart.</param>
    /// <param name="messages">Takes the message.</param>
    public static void WarnIfElsewhere(
        string path,
        SkyFacts place,
        ChartGeometry chart,
        List<string> messages
    )
    {
        var (centre, radius) = SceneMaker.Reach(chart);
        if (place.Corners.Count == 0)
        {
            // A map of the whole sky: it is never elsewhere.
            return;
        }

        var reach = place
            .Corners.Select(corner => corner.SeparationTo(place.Centre))
            .Aggregate(Angle.Max);
        var away = place.Centre.SeparationTo(centre);
        if (away > radius + reach)
        {
            messages.Add(
                FormattableString.Invariant(
                    $"{path}: the picture lies {away.Degrees:0.0}° from the middle of the chart; nothing of it is seen."
                )
            );
        }
    }

    private static SkyFacts Place(string path, PictureFacts facts) =>
        facts.Sky ?? throw new InputException(NoSolution.Explain(path, facts));
}
