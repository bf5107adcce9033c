namespace Framing.Imaging;

/// <summary>Finds the stars of a frame.</summary>
/// <remarks>
/// <list type="number">
/// <item>Background and noise come from cells about 64 pixels wide, stars cut away; peaks of the slightly smoothed frame
/// that stand above the noise are measured under a bell-shaped window as wide as the frame's stars.</item>
/// <item>Left out: points too sharp for a star (hot pixels), straight lines (satellites), what is much wider or longer than the
/// frame's stars (knots of a nebula), and what touches the border. Undefined samples and black borders are no sky.</item>
/// <item>A frame whose stars are wide is searched again at half, a quarter or an eighth of its size; places are always
/// measured at full size.</item>
/// <item>A colour picture counts with the mean of its colours; under a colour filter neighbours are joined so that each
/// colour counts alike.</item>
/// <item>The same frame gives the same stars, on however many cores.</item>
/// </list>
/// </remarks>
public static class StarFinder
{
    /// <summary>Finds the stars of a frame.</summary>
    /// <param name="picture">The frame.</param>
    /// <param name="settings">How to look; the usual settings if null.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The stars and a verdict on the frame; a frame without stars is a result, not an error.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static FoundStars Find(
        Picture picture,
        StarFinderSettings? settings = null,
        CancellationToken cancel = default
    )
    {
        ArgumentNullException.ThrowIfNull(picture);
        var search = new StarSearch(
            StarPlane.Of(picture, (settings ?? StarFinderSettings.Usual).ColourFilter),
            settings ?? StarFinderSettings.Usual,
            cancel
        );
        return search.Run(picture.Reduction);
    }
}
