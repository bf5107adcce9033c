using Framing.Sky;

namespace Framing.Rehearsal.Tests.Frames;

/// <summary>Frames of all kinds of rigs and skies, one for each number: the same on every run.</summary>
internal static class Sweep
{
    /// <summary>The recipe of a number.</summary>
    /// <param name="number">From 0.</param>
    /// <param name="megapixels">How large the frame is about; null for what the number decides, up to 6.</param>
    public static FrameRecipe Recipe(int number, double? megapixels = null)
    {
        var random = new Random(7_000 + number);
        var area = megapixels ?? 0.4 * Math.Pow(15.0, random.NextDouble() * random.NextDouble());
        var binning = number % 5 == 4 ? random.Next(2, 5) : 1;
        var height = (int)Math.Sqrt(area * 1e6 / 1.5) * binning;
        var width = height * 3 / 2;

        // Fields of 1.5 to 12 degrees, sampled at a pixel of 3.76 micrometres.
        var field = 2.0 * Math.Pow(6.0, random.NextDouble());
        var focal = width * 3.76e-3 / (2.0 * Math.Tan(field * Math.PI / 360.0));
        var cropped = number % 7 == 3;
        var camera = new CameraModel
        {
            Sensor = new(width, height, 3.76),
            Binning = binning,
            RowsTopDown = random.Next(2) == 0,
            SerialNumber = (ulong)number,
            HotShare = 1e-5 * Math.Pow(30.0, random.NextDouble()),
            ColourPattern = binning == 1 && number % 6 == 1 ? "RGGB" : null,
            Window = cropped
                ? new(
                    width / binning / 8,
                    height / binning / 6,
                    width / binning * 3 / 4,
                    height / binning * 3 / 4
                )
                : null,
        };
        var z = (2.0 * random.NextDouble()) - 1.0;
        return new()
        {
            Pose = new(
                SkyDirection.FromDegrees(
                    360.0 * random.NextDouble(),
                    Math.Asin(z) * 180.0 / Math.PI
                ),
                PositionAngle.FromDegrees(360.0 * random.NextDouble())
            ),
            Camera = camera,
            Lens = new()
            {
                FocalLengthMillimetres = focal,
                ApertureMillimetres = Math.Clamp(focal / 5.0, 12.0, 120.0),
                Mirrored = random.Next(3) == 0,
                BlurPx = (1.2 + random.NextDouble()) * binning,
                CurvaturePx = 2.0 * random.NextDouble() * binning,
                ComaPx = 2.0 * random.NextDouble() * binning,
                DistortionPx = ((10.0 * random.NextDouble()) - 5.0) * binning,
                TiltPx = random.NextDouble() * binning,
                Vignetting = 0.5 * random.NextDouble(),
            },
            Sky = new()
            {
                SeeingArcsec = 2.0 + (3.0 * random.NextDouble()),
                BrightnessMagArcsec2 = 19.0 + (2.8 * random.NextDouble()),
                Gradient = 0.4 * random.NextDouble(),
                GradientDirection = Angle.FromDegrees(360.0 * random.NextDouble()),
                Clouds = number % 4 == 2 ? 0.6 * random.NextDouble() : 0.0,
                Satellites = number % 3 == 0 ? random.Next(1, 4) : 0,
            },
            Exposure = new()
            {
                Start = new DateTime(2026, 1, 1, 20, 0, 0, DateTimeKind.Utc).AddDays(
                    random.Next(365)
                ),
                Seconds = 5.0 + (25.0 * random.NextDouble()),
                TrailXPx = number % 8 == 5 ? 4.0 * random.NextDouble() : 0.0,
                TrailYPx = number % 8 == 5 ? 4.0 * random.NextDouble() : 0.0,
            },
            Seed = (ulong)number + 1,
        };
    }
}
