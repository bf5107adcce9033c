using Framing.Imaging;

namespace Framing.Rehearsal.Tests.StarFinding;

/// <summary>Pairs found stars with those that a frame was made of.</summary>
internal sealed class Pairing
{
    private const double Within = 2.5;

    private readonly RehearsedFrame frame;
    private readonly FoundStars found;
    private readonly Dictionary<(int, int), List<FrameStar>> grid = [];

    public Pairing(RehearsedFrame frame, FoundStars found)
    {
        (this.frame, this.found) = (frame, found);
        foreach (var star in frame.Stars)
        {
            var cell = ((int)star.Position.X / 8, (int)star.Position.Y / 8);
            (grid.TryGetValue(cell, out var list) ? list : grid[cell] = []).Add(star);
        }
    }

    /// <summary>How many of the first found stars stand where no star of half their light is.</summary>
    public int WrongAmong(int count) =>
        found.Stars.Take(count).Count(star => Distance(star) > Within);

    /// <summary>How many found stars are stars of the catalogue.</summary>
    public int RealFound =>
        found.Stars.Count(star =>
            Near(star.Position.X, star.Position.Y, Within)
                .Any(other =>
                    other.IsReal
                    && other.Electrons
                        > 0.4
                            * star.Flux
                            * frame.Recipe.Camera.ElectronsPerStep
                            * frame.Recipe.Camera.Binning
                            * frame.Recipe.Camera.Binning
                )
        );

    /// <summary>The error along an axis of stars that stand alone and well out of the noise.</summary>
    public double Rms
    {
        get
        {
            var squares = found
                .Stars.Where(star =>
                    star is { IsBlended: false, IsSaturated: false, SignalToNoise: > 40.0 }
                )
                .Select(Distance)
                .Where(distance => distance < 1.0)
                .Select(distance => distance * distance / 2.0)
                .ToList();
            return squares.Count == 0 ? 0.0 : Math.Sqrt(squares.Average());
        }
    }

    /// <summary>Of the stars with 15 times the light of the noise that stand alone, the share that was not found.</summary>
    public double MissedShare
    {
        get
        {
            var recipe = frame.Recipe;
            var steps =
                recipe.Camera.ElectronsPerStep * recipe.Camera.Binning * recipe.Camera.Binning;
            var width = found.TypicalWidthPx ?? 3.0;
            var least =
                25.0
                * frame.Noise
                * width
                * steps
                / (recipe.Camera.ColourPattern is null ? 1.0 : 0.2);
            var (missed, all) = (0, 0);
            foreach (var star in frame.Stars.TakeWhile(star => star.Electrons > least).Take(1500))
            {
                var (x, y) = (star.Position.X, star.Position.Y);
                if (
                    x < 12.0
                    || y < 12.0
                    || x > frame.Width - 12.0
                    || y > frame.Height - 12.0
                    || Near(x, y, 3.0 * width)
                        .Any(other => other != star && other.Electrons > 0.2 * star.Electrons)
                )
                {
                    continue;
                }

                all++;
                missed += found.Stars.Any(hit =>
                    double.Hypot(hit.Position.X - x, hit.Position.Y - y) < Within
                )
                    ? 0
                    : 1;
            }

            return all == 0 ? 0.0 : (double)missed / all;
        }
    }

    private double Distance(FoundStar star)
    {
        var recipe = frame.Recipe;
        var steps = recipe.Camera.ElectronsPerStep * recipe.Camera.Binning * recipe.Camera.Binning;
        var best = double.PositiveInfinity;
        foreach (var other in Near(star.Position.X, star.Position.Y, Within))
        {
            if (other.Electrons > 0.4 * star.Flux * steps)
            {
                best = Math.Min(
                    best,
                    double.Hypot(
                        other.Position.X - star.Position.X,
                        other.Position.Y - star.Position.Y
                    )
                );
            }
        }

        return best;
    }

    private IEnumerable<FrameStar> Near(double x, double y, double reach)
    {
        var (i0, i1) = ((int)(x - reach) / 8, (int)(x + reach) / 8);
        var (j0, j1) = ((int)(y - reach) / 8, (int)(y + reach) / 8);
        for (var i = i0; i <= i1; i++)
        {
            for (var j = j0; j <= j1; j++)
            {
                foreach (var star in grid.GetValueOrDefault((i, j), []))
                {
                    if (double.Hypot(star.Position.X - x, star.Position.Y - y) <= reach)
                    {
                        yield return star;
                    }
                }
            }
        }
    }
}
