namespace Framing.Rehearsal;

/// <summary>Makes the frame that a rig would record, with the truth about it.</summary>
/// <remarks>
/// <list type="number">
/// <item>Stars of the catalogue stand where their motion has brought them by the frame's date; fainter ones are made up, as
/// many as the real sky has. Aberration and refraction are left out: over a frame they are a shift and a scale below a ten
/// thousandth.</item>
/// <item>Nothing of it serves the matching of stars: no code is shared with what it tests.</item>
/// <item>The same recipe gives the same numbers, on however many cores.</item>
/// </list>
/// </remarks>
public static class FrameMaker
{
    private const int BandRows = 96;

    /// <summary>Makes a frame.</summary>
    /// <param name="recipe">What it depends on.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The frame and its truth.</returns>
    /// <exception cref="InvalidOperationException">The parts of the recipe do not fit each other.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static RehearsedFrame Make(FrameRecipe recipe, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        recipe.Camera.Check();
        var geometry = new FrameGeometry(recipe);
        var electrons = new float[geometry.Width * geometry.Height];
        IReadOnlyList<FrameStar> stars = [];
        var noise = 0.0;
        switch (recipe.Kind)
        {
            case FrameKind.Light:
                stars = PaintSky(recipe, geometry, electrons, cancel);
                noise = LightRates.OfSky(recipe);
                break;
            case FrameKind.Flat:
                PaintFlat(recipe, geometry, electrons);
                noise =
                    0.5
                    * recipe.Camera.FullWellElectrons
                    * recipe.Camera.Binning
                    * recipe.Camera.Binning;
                break;
            default:
                break;
        }

        var samples = new ushort[electrons.Length];
        var detector = new Detector(recipe, geometry);
        Parallel.For(
            0,
            geometry.Height,
            new ParallelOptions { CancellationToken = cancel },
            row =>
                detector.Read(
                    row,
                    electrons.AsSpan(row * geometry.Width, geometry.Width),
                    samples.AsSpan(row * geometry.Width, geometry.Width)
                )
        );
        return new()
        {
            Recipe = recipe,
            Width = geometry.Width,
            Height = geometry.Height,
            Samples = samples,
            Coordinates = geometry.Coordinates,
            Stars = stars,
            Noise =
                LightRates.NoiseOf(recipe, noise)
                / (recipe.Camera.ElectronsPerStep * recipe.Camera.Binning * recipe.Camera.Binning),
        };
    }

    private static List<FrameStar> PaintSky(
        FrameRecipe recipe,
        FrameGeometry geometry,
        float[] electrons,
        CancellationToken cancel
    )
    {
        var mesh = new SkyMesh(recipe, geometry);
        var field = StarField.Of(recipe, geometry, mesh);
        var sky = LightRates.OfSky(recipe);
        var noise = LightRates.NoiseOf(recipe, sky);
        var pattern = recipe.Camera.ColourPattern;
        var skyShares = ColourShares.OfSky(pattern);
        var usual = field.Count > 0 ? field[^1].Light.Width : 2.0;
        var satellites = new SatelliteLines(recipe, geometry, usual, noise);
        var bands = (geometry.Height + BandRows - 1) / BandRows;
        Parallel.For(
            0,
            bands,
            new ParallelOptions { CancellationToken = cancel },
            band =>
            {
                var (from, to) = (
                    band * BandRows,
                    Math.Min(geometry.Height, (band + 1) * BandRows)
                );
                for (var row = from; row < to; row++)
                {
                    var line = electrons.AsSpan(row * geometry.Width, geometry.Width);
                    mesh.FillRow(row, line);
                    for (var x = 0; pattern is not null && x < line.Length; x++)
                    {
                        line[x] *= skyShares[((row & 1) * 2) + (x & 1)];
                    }

                    satellites.AddTo(row, line);
                }

                AddStars(recipe, geometry, field, 0.05 * noise, electrons, from, to);
            }
        );
        return Truth(recipe, geometry, field, electrons);
    }

    private static void AddStars(
        FrameRecipe recipe,
        FrameGeometry geometry,
        List<(StarLight Light, FrameStar Star)> field,
        double least,
        float[] electrons,
        int from,
        int to
    )
    {
        var binning = recipe.Camera.Binning;
        var spread = new PointSpread(
            recipe.Exposure.TrailXPx / binning,
            recipe.Exposure.TrailYPx / binning,
            recipe.Lens.DefocusPx / binning
        );
        Span<float> shares = stackalloc float[4];
        foreach (var (light, _) in field)
        {
            var reach = spread.Reach(light, least);
            if (light.Y + reach >= from && light.Y - reach < to)
            {
                ColourShares.OfStar(recipe.Camera.ColourPattern, light.Colour, shares);
                spread.Add(light, reach, electrons, geometry.Width, from, to, shares);
            }
        }
    }

    private static void PaintFlat(FrameRecipe recipe, FrameGeometry geometry, float[] electrons)
    {
        var joined = recipe.Camera.Binning * recipe.Camera.Binning;
        var shares = ColourShares.OfSky(recipe.Camera.ColourPattern);
        var most = shares.Max();
        Parallel.For(
            0,
            geometry.Height,
            row =>
            {
                for (var x = 0; x < geometry.Width; x++)
                {
                    electrons[(row * geometry.Width) + x] = (float)(
                        0.5
                        * recipe.Camera.FullWellElectrons
                        * joined
                        * shares[((row & 1) * 2) + (x & 1)]
                        / most
                        * SkyMesh.Shading(recipe.Lens, geometry, x, row)
                    );
                }
            }
        );
    }

    /// <summary>The stars inside the frame, and which of them fill their wells.</summary>
    private static List<FrameStar> Truth(
        FrameRecipe recipe,
        FrameGeometry geometry,
        List<(StarLight Light, FrameStar Star)> field,
        float[] electrons
    )
    {
        var camera = recipe.Camera;
        var full =
            Math.Min(
                camera.FullWellElectrons,
                (65535.0 - camera.BiasLevel) * camera.ElectronsPerStep
            )
            * camera.Binning
            * camera.Binning;
        var stars = new List<FrameStar>(field.Count);
        foreach (var (light, star) in field)
        {
            var (column, row) = ((int)Math.Round(light.X), (int)Math.Round(light.Y));
            if (column < 0 || row < 0 || column >= geometry.Width || row >= geometry.Height)
            {
                continue;
            }

            stars.Add(
                star with
                {
                    IsSaturated = electrons[(row * geometry.Width) + column] >= full,
                }
            );
        }

        return stars;
    }
}
