namespace Framing.Drawing;

/// <summary>Stars: dots with an area that follows their light, and the names of bright ones.</summary>
internal sealed class StarLayer
{
    /// <summary>At 1600 x 1000 at most one star for so many square pixels of chart.</summary>
    private const double PixelsPerStar = 320.0;

    /// <summary>A name costs more room than it is worth beyond this: it would cover lines or stars on every side.</summary>
    private const double MostNameCost = 4.0;

    private readonly SkyComposer composer;
    private readonly List<(ChartStar Star, PicturePoint Place, double Radius)> shown = [];
    private readonly List<(string Name, Box Room, double Size)> names = [];

    public StarLayer(SkyComposer composer)
    {
        this.composer = composer;
        var unit = composer.Unit;
        var near = composer.Chart.Frame.Grown(24.0 * unit);
        var inside = new List<double>();
        foreach (var star in composer.Scene.Stars)
        {
            if (composer.Chart.TrySkyToPicture(star.Direction, out var place) && near.Holds(place))
            {
                shown.Add((star, place, 0.0));
                inside.Add(star.Magnitude);
            }
        }

        var frame = composer.Chart.Frame;
        composer.Sizes = StarSizes.For(
            inside,
            (int)(frame.Width * frame.Height / (unit * unit) / PixelsPerStar),
            Math.Max(0.75, 0.95 * unit),
            Math.Max(5.0, 13.0 * unit)
        );
        shown.RemoveAll(entry => entry.Star.Magnitude > composer.Sizes.Faintest);
        for (var i = 0; i < shown.Count; i++)
        {
            shown[i] = shown[i] with { Radius = composer.Sizes.RadiusOf(shown[i].Star.Magnitude) };
        }

        // Brightest last, so that none hides under a fainter one; a stable order for equal ones.
        var order = shown
            .OrderByDescending(entry => entry.Star.Magnitude)
            .ThenBy(entry => entry.Place.X)
            .ThenBy(entry => entry.Place.Y)
            .ToList();
        shown.Clear();
        shown.AddRange(order);
    }

    public void Avoid()
    {
        foreach (var (_, place, radius) in shown)
        {
            if (radius > 2.2 * composer.Unit)
            {
                composer.Placer.Avoid(place, radius);
            }
        }
    }

    /// <summary>Names of the few brightest stars, before those of objects.</summary>
    public void PlaceBrightNames() => PlaceNames(shown.Where(entry => entry.Star.Magnitude < 2.5));

    public void PlaceNames() => PlaceNames(shown.Where(entry => entry.Star.Magnitude >= 2.5));

    public void Draw()
    {
        composer.Sheet.Group("stars", null, DrawDots);
    }

    public void DrawNames()
    {
        foreach (var (name, room, size) in names)
        {
            composer.Sheet.Write(
                name,
                SkyComposer.StartIn(room, size),
                size,
                TextWeight.Regular,
                composer.Palette.StarText,
                composer.TextBorder
            );
        }
    }

    private void DrawDots()
    {
        var palette = composer.Palette;
        var groups = new SortedDictionary<(int Opacity, int Tint), List<(PicturePoint, double)>>();
        var rings = new List<(PicturePoint, double)>();
        foreach (var (star, place, radius) in shown)
        {
            if (star.MadeUp)
            {
                rings.Add((place, radius + (0.4 * composer.Unit)));
                continue;
            }

            var key = (
                composer.Sizes.OpacityStepOf(star.Magnitude),
                palette.TintsStars ? StarTint.StepOf(star.ColourIndex) : 0
            );
            if (!groups.TryGetValue(key, out var places))
            {
                groups.Add(key, places = []);
            }

            places.Add((place, radius));
        }

        if (rings.Count > 0)
        {
            composer.Sheet.Add(new Mark.Rings(rings, MadeUpRing(palette, composer.Unit)));
        }

        foreach (var ((opacity, tint), places) in groups)
        {
            var colour = palette.TintsStars ? StarTint.Of(tint) : palette.Star;
            composer.Sheet.Add(new Mark.Dots(places, colour.At(StarSizes.OpacityOf(opacity))));
        }
    }

    public static Stroke MadeUpRing(Palette palette, double unit) =>
        new(palette.Star.At(0.7), Math.Max(0.7, 0.8 * unit));

    private void PlaceNames(IEnumerable<(ChartStar Star, PicturePoint Place, double Radius)> stars)
    {
        var size = composer.Layout.Text(12.5);
        foreach (var (star, place, radius) in stars.Reverse())
        {
            if (star.Name is not { Length: > 0 } name || !composer.Chart.Holds(place))
            {
                continue;
            }

            var (width, height) = SkyComposer.Measure(name, size, TextWeight.Regular);
            if (
                composer.Placer.Place(
                    Around(place, radius + (3.5 * composer.Unit), width, height),
                    MostNameCost
                ) is
                { } room
            )
            {
                names.Add((name, room, size));
                composer.Note(name, LabelKind.Star, room);
            }
        }
    }

    private static IEnumerable<(Box, double)> Around(
        PicturePoint star,
        double away,
        double width,
        double height
    )
    {
        var slanted = away * 0.75;
        Box At(double left, double top) => new(left, top, left + width, top + height);
        yield return (At(star.X + away, star.Y - (height / 2.0)), 0.0);
        yield return (At(star.X - away - width, star.Y - (height / 2.0)), 0.3);
        yield return (At(star.X + slanted, star.Y - slanted - height), 0.4);
        yield return (At(star.X + slanted, star.Y + slanted), 0.5);
        yield return (At(star.X - (width / 2.0), star.Y - away - height), 0.6);
        yield return (At(star.X - (width / 2.0), star.Y + away), 0.7);
        yield return (At(star.X - slanted - width, star.Y - slanted - height), 0.8);
        yield return (At(star.X - slanted - width, star.Y + slanted), 0.9);
    }
}
