namespace Framing.Drawing;

/// <summary>Stars: dots with an area that follows their light, and the names of bright ones.</summary>
internal sealed class StarLayer
{
    /// <summary>At 1600 x 1000 at most one star for so many square pixels of chart.</summary>
    private const double PixelsPerStar = 320.0;

    /// <summary>A name that would cover lines or stars on every side is not worth its room.</summary>
    private const double MostNameCost = 4.0;

    private readonly SkyComposer composer;
    private readonly List<ShownStar> shown = [];
    private double namedArea;

    public StarLayer(SkyComposer composer)
    {
        this.composer = composer;
        var unit = composer.Unit;
        var near = composer.Chart.Frame.Grown(24.0 * unit);
        var magnitudes = new List<double>();
        foreach (var star in composer.Scene.Stars)
        {
            if (composer.Chart.TrySkyToPicture(star.Direction, out var place) && near.Holds(place))
            {
                shown.Add(new(star, place));
                magnitudes.Add(star.Magnitude);
            }
        }

        var frame = composer.Chart.Frame;
        composer.Sizes = StarSizes.For(
            magnitudes,
            (int)(frame.Width * frame.Height / (unit * unit) / PixelsPerStar),
            Math.Max(0.75, 0.95 * unit),
            LargestRadius(composer)
        );
        shown.RemoveAll(entry => entry.Star.Magnitude > composer.Sizes.Faintest);

        // Brightest last, so that none hides under a fainter one; places settle the order of equal ones.
        shown.Sort(
            static (one, other) =>
            {
                var order = other.Star.Magnitude.CompareTo(one.Star.Magnitude);
                order = order != 0 ? order : one.Place.X.CompareTo(other.Place.X);
                return order != 0 ? order : one.Place.Y.CompareTo(other.Place.Y);
            }
        );
    }

    public static Stroke MadeUpRing(Palette palette, double unit) =>
        new(palette.Star.At(0.75), Math.Max(0.7, 0.9 * unit));

    /// <summary>Over the user's own picture dots are small, so that they mark its stars and do not hide them.</summary>
    private static double LargestRadius(SkyComposer composer) =>
        composer.Scene.Backdrop is null or { IsMadeUp: true }
            ? Math.Max(5.0, 16.0 * composer.Unit)
            : Math.Max(3.0, 5.0 * composer.Unit);

    public void Avoid()
    {
        foreach (var entry in shown)
        {
            var radius = composer.Sizes.RadiusOf(entry.Star.Magnitude);
            if (radius > 2.0 * composer.Unit)
            {
                composer.Placer.Avoid(new Dot(entry.Place, radius));
            }
        }
    }

    /// <summary>Names of the few stars that everybody knows, before those of objects.</summary>
    public void PlaceBrightNames() => PlaceNames(-9.0, 2.5);

    public void PlaceNames() => PlaceNames(2.5, 99.0);

    public void Draw()
    {
        composer.Sheet.Group("stars", null, DrawDots);
    }

    private void DrawDots()
    {
        var palette = composer.Palette;
        var groups = new List<Dot>?[(StarSizes.OpacitySteps + 1) * StarTint.Steps];
        var rings = new List<Dot>();
        foreach (var entry in shown)
        {
            var star = entry.Star;
            var radius = composer.Sizes.RadiusOf(star.Magnitude);
            if (star.MadeUp)
            {
                rings.Add(new(entry.Place, radius + (0.5 * composer.Unit)));
                continue;
            }

            var group =
                (composer.Sizes.OpacityStepOf(star.Magnitude) * StarTint.Steps)
                + (palette.TintsStars ? StarTint.StepOf(star.ColourIndex) : 0);
            (groups[group] ??= []).Add(new(entry.Place, radius));
        }

        if (rings.Count > 0)
        {
            composer.Sheet.Add(new Mark.Rings(rings, MadeUpRing(palette, composer.Unit)));
        }

        for (var group = 0; group < groups.Length; group++)
        {
            if (groups[group] is { } dots)
            {
                var tint = palette.TintsStars ? StarTint.Of(group % StarTint.Steps) : palette.Star;
                var opacity = StarSizes.OpacityOf(group / StarTint.Steps);
                composer.Sheet.Add(new Mark.Dots(dots, tint.At(opacity)));
            }
        }
    }

    private void PlaceNames(double brightest, double faintest)
    {
        var size = composer.Layout.Text(12.5);
        for (var i = shown.Count - 1; i >= 0; i--)
        {
            var star = shown[i].Star;
            if (
                star.Name is not { Length: > 0 } name
                || star.Magnitude < brightest
                || star.Magnitude >= faintest
                || !composer.Chart.Holds(shown[i].Place)
            )
            {
                continue;
            }

            var (width, height) = SkyComposer.Measure(name, size, composer.Palette.Plain);
            if (namedArea + (width * height) > composer.RoomForNames * 0.35)
            {
                return;
            }

            var away = composer.Sizes.RadiusOf(star.Magnitude) + (3.5 * composer.Unit);
            composer.Placer.Begin(MostNameCost);
            Offer(shown[i].Place, away, width, height);
            if (composer.Placer.Take() is { } room)
            {
                namedArea += width * height;
                composer.Name(
                    new(name, room, size, composer.Palette.Plain, composer.Palette.StarText),
                    LabelKind.Star
                );
            }
        }
    }

    private void Offer(PicturePoint star, double away, double width, double height)
    {
        var slanted = away * 0.75;
        void At(double left, double top, double cost) =>
            composer.Placer.Offer(new(left, top, left + width, top + height), cost);
        At(star.X + away, star.Y - (height / 2.0), 0.0);
        At(star.X - away - width, star.Y - (height / 2.0), 0.3);
        At(star.X + slanted, star.Y - slanted - height, 0.4);
        At(star.X + slanted, star.Y + slanted, 0.5);
        At(star.X - (width / 2.0), star.Y - away - height, 0.6);
        At(star.X - (width / 2.0), star.Y + away, 0.7);
        At(star.X - slanted - width, star.Y - slanted - height, 0.8);
        At(star.X - slanted - width, star.Y + slanted, 0.9);
    }

    private sealed class ShownStar(ChartStar star, PicturePoint place)
    {
        public ChartStar Star { get; } = star;

        public PicturePoint Place { get; } = place;
    }
}
