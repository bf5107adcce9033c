namespace Framing.Plugins;

/// <summary>Neighbours share just enough stars to be laid onto each other.</summary>
/// <remarks>
/// Both strips are made wider together, the same angle on the sky, until the strip with the fewest stars, as the panels
/// really stand, has as many as are wanted. The stars are those to expect: the catalogue's own to V 10, and beyond that
/// counts by place and magnitude.
/// </remarks>
[Strategy(
    "for-registration",
    "Share as little as leaves enough stars in every shared strip to join the panels by"
)]
[StrategySetting(
    "least_stars",
    SettingKind.Number,
    "stars to expect in the strip that has the fewest",
    Default = "20",
    Least = 3.0,
    Most = 100_000.0
)]
[StrategySetting(
    "faintest_mag",
    SettingKind.Number,
    "the faintest star, Johnson V, that one sub shows clearly; a test frame tells",
    Default = "13",
    Least = 4.0,
    Most = 16.0
)]
[StrategySetting(
    "least_overlap_arcmin",
    SettingKind.Number,
    "never less than this, in minutes of arc at the middle of the mosaic",
    Default = "1",
    Least = 0.0
)]
[StrategySetting(
    "most_overlap_fraction",
    SettingKind.Number,
    "refuse when more than this part of the panel would be needed; 0.5 is 50 %",
    Default = "0.5",
    Least = 0.01,
    Most = 0.9
)]
public sealed class ForRegistration : IOverlapStrategy
{
    /// <summary>Halvings between the least overlap and the most: the strip is good to a thousandth of the panel.</summary>
    private const int Halvings = 10;

    /// <summary>Answers the smallest overlap whose every strip holds enough stars.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The overlap; a refusal when the panel is too small for so many stars.</returns>
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        var settings = question.Settings;
        var field = question.Rig.Field;
        var stars = settings.Number("least_stars");
        var faintest = settings.Number("faintest_mag");
        var most = settings.Number("most_overlap_fraction");
        var widest = Math.Min(field.TangentWidth, field.TangentHeight) * most;
        var least = Math.Min(
            Angle.FromArcminutes(settings.Number("least_overlap_arcmin")).Radians,
            widest
        );
        if (Fewest(least) >= stars)
        {
            return Answer(least);
        }

        if (Fewest(widest) < stars)
        {
            return OverlapAnswer.Refuse(
                FormattableString.Invariant(
                    $"even {most * 100.0:0.#} % of the panel shared leaves {Fewest(widest):0} stars to V {faintest:0.#} in the poorest strip, not {stars:0}; expose so that fainter stars show (faintest_mag), or ask for fewer (least_stars)"
                )
            );
        }

        var (low, high) = (least, widest);
        for (var round = 0; round < Halvings; round++)
        {
            var middle = (low + high) / 2.0;
            (low, high) = Fewest(middle) >= stars ? (low, middle) : (middle, high);
        }

        return Answer(high);

        double Fewest(double strip) =>
            question.Aids.SharedStars.Fewest(new(strip, strip), faintest);

        OverlapAnswer Answer(double strip) =>
            OverlapAnswer.Share(
                new(strip, strip),
                FormattableString.Invariant(
                    $"{stars:0} stars to V {faintest:0.#} to expect in the poorest shared strip"
                )
            );
    }
}
