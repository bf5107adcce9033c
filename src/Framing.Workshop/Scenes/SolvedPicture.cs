using Framing.Drawing;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Opens pictures that have to know their place on the sky.</summary>
internal static class SolvedPicture
{
    /// <summary>Pixels of the file read for each pixel of the chart: more would be averaged away again.</summary>
    private const int Oversampling = 4;

    /// <summary>What a picture with a solution is.</summary>
    /// <param name="path">The file.</param>
    /// <returns>Its facts; their Sky is there.</returns>
    /// <exception cref="InputException">The file has no solution that can be used: it says what to do.</exception>
    public static PictureFacts Inspect(string path)
    {
        var facts = PictureFile.Inspect(path);
        if (facts.Sky is null)
        {
            throw new InputException(NoSolution.Explain(path, facts));
        }

        return facts;
    }

    /// <summary>Reads a picture to lay under a chart.</summary>
    /// <param name="path">The file.</param>
    /// <param name="size">The size of the chart's picture.</param>
    /// <returns>The backdrop.</returns>
    /// <exception cref="InputException">The file has no solution that can be used.</exception>
    public static PictureBackdrop ReadBackdrop(string path, PictureSize size)
    {
        Inspect(path);
        return new(PictureFile.Read(path, Oversampling * size.Width * size.Height));
    }

    /// <summary>Says so when a picture lies outside the chart.</summary>
    /// <param name="path">The picture, with a solution.</param>
    /// <param name="chart">The chart.</param>
    /// <param name="messages">Takes the message.</param>
    public static void WarnIfElsewhere(string path, ChartGeometry chart, List<string> messages)
    {
        var place = Inspect(path).Sky!;
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
}
