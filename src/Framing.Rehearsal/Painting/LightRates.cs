namespace Framing.Rehearsal;

/// <summary>How many electrons the light of a frame gives.</summary>
internal static class LightRates
{
    /// <summary>
    /// Photons a second, square metre and nanometre of a star of V 0 outside the air: 1000 a second, square centimetre and
    /// ångström (common practice, from memory).
    /// </summary>
    private const double Photons = 1e8;

    /// <summary>What of the light air and glass let through.</summary>
    private const double Throughput = 0.7;

    /// <summary>Electrons of a star of V 0 in the whole exposure.</summary>
    public static double OfMagnitudeZero(FrameRecipe recipe)
    {
        var metres = recipe.Lens.ApertureMillimetres / 1000.0;
        return Photons
            * Throughput
            * recipe.Camera.QuantumEfficiency
            * recipe.Exposure.BandwidthNanometres
            * recipe.Exposure.Seconds
            * Math.PI
            / 4.0
            * metres
            * metres;
    }

    /// <summary>Electrons of the empty sky in a pixel of the frame in the middle.</summary>
    public static double OfSky(FrameRecipe recipe)
    {
        var side = recipe.Scale.Arcseconds * recipe.Camera.Binning;
        return OfMagnitudeZero(recipe) * OfMagnitude(recipe.Sky.BrightnessMagArcsec2) * side * side;
    }

    /// <summary>The light of a magnitude over that of magnitude 0.</summary>
    public static double OfMagnitude(double magnitude) => Math.Pow(10.0, -0.4 * magnitude);

    /// <summary>Noise of a pixel of the frame that receives so many electrons, in electrons.</summary>
    public static double NoiseOf(FrameRecipe recipe, double electrons)
    {
        var camera = recipe.Camera;
        var joined = (double)camera.Binning * camera.Binning;
        var dark =
            recipe.Kind == FrameKind.Bias ? 0.0 : camera.DarkCurrent * recipe.Exposure.Seconds;
        return Math.Sqrt(
            electrons + (joined * (dark + (camera.ReadNoiseElectrons * camera.ReadNoiseElectrons)))
        );
    }
}
