using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Rehearsal.Tests.Frames;

public sealed class FrameMakerTests
{
    [Fact]
    public void Make_SameRecipe_SameNumbers()
    {
        var recipe = Recipes.Small(400, 300) with
        {
            Sky = new() { Clouds = 0.5, Satellites = 2 },
        };

        Assert.Equal(Recipes.Make(recipe).Samples, Recipes.Make(recipe).Samples);
        Assert.NotEqual(
            Recipes.Make(recipe).Samples,
            Recipes.Make(recipe with { Seed = 2 }).Samples
        );
    }

    [Fact]
    public void Make_EmptySky_LevelAndNoiseAreThoseOfTheFormula()
    {
        // A line filter leaves no star of the catalogue's faint end; the few bright ones are cut away by the median.
        var recipe = Recipes.Bare();
        var frame = Recipes.Make(recipe);

        // 1e8 photons / (s m² nm) at V 0 (from memory), 0.7 let through, 0.6 detected, 300 nm, 10 s, an aperture of 51 mm,
        // pixels of 206264.8 * 4.63e-3 / 250 arcsec, V 21.3 a square arcsecond, 0.8 electrons a step.
        var side = 206264.8 * 4.63e-3 / 250.0;
        var electrons =
            1e8
            * 0.7
            * 0.6
            * 300.0
            * 10.0
            * Math.PI
            * 0.0255
            * 0.0255
            * Math.Pow(10.0, -0.4 * 21.3)
            * side
            * side;
        var sorted = frame.Samples.Select(v => (double)v).Order().ToList();
        var middle = sorted[sorted.Count / 2];
        var low = sorted[(int)(sorted.Count * 0.1587)];
        Assert.InRange(middle, 500.0 + (electrons / 0.8) - 1.0, 500.0 + (electrons / 0.8) + 1.5);

        // Counting noise, 1.8 electrons of reading, 0.05 of darkness; the step of whole numbers adds 1/12.
        var noise = Math.Sqrt(((electrons + 0.05 + (1.8 * 1.8)) / 0.64) + (1.0 / 12.0));
        Assert.InRange(middle - low, noise - 0.8, noise + 1.0);
        Assert.InRange(frame.Noise, 0.97 * noise, 1.03 * noise);
    }

    [Fact]
    public void Make_BrightStar_HasTheLightOfItsMagnitude()
    {
        var recipe = Recipes.Bare() with
        {
            Exposure = new() { Start = Recipes.Evening, Seconds = 2.0 },
        };
        var frame = Recipes.Make(recipe);
        var star = frame.Stars.First(s => s.VMagnitude > 8.5 && IsAlone(frame, s, 25.0));

        var (x, y) = ((int)Math.Round(star.Position.X) - 1, (int)Math.Round(star.Position.Y) - 1);
        var sky = frame.Samples.Select(v => (double)v).Order().ElementAt(frame.Samples.Length / 2);
        var sum = 0.0;
        for (var j = -14; j <= 14; j++)
        {
            for (var i = -14; i <= 14; i++)
            {
                sum += Recipes.At(frame, x + i, y + j) - sky;
            }
        }

        var expected =
            1e8
            * 0.7
            * 0.6
            * 300.0
            * 2.0
            * Math.PI
            * 0.0255
            * 0.0255
            * Math.Pow(10.0, -0.4 * star.VMagnitude);
        Assert.InRange(star.Electrons / expected, 0.999, 1.001);
        Assert.InRange(sum * 0.8 / expected, 0.95, 1.03);
    }

    [Theory]
    [InlineData(1, false, false, false)]
    [InlineData(1, true, true, false)]
    [InlineData(2, true, false, true)]
    [InlineData(3, false, true, true)]
    [InlineData(4, true, true, false)]
    public void Make_AnyCamera_StarsStandWhereTheCoordinatesSay(
        int binning,
        bool topDown,
        bool mirrored,
        bool cropped
    )
    {
        var small = Recipes.Small(1200, 1000);
        var recipe = small with
        {
            Camera = small.Camera with
            {
                Binning = binning,
                RowsTopDown = topDown,
                HotShare = 0.0,
                Window = cropped
                    ? new(60 / binning, 100 / binning, 900 / binning, 700 / binning)
                    : null,
            },
            Lens = small.Lens with
            {
                Mirrored = mirrored,
                DistortionPx = 5.0,
                TiltPx = 1.0,
                BlurPx = 1.8 * binning,
                ComaPx = 2.0,
            },
            Sky = small.Sky with { FaintStars = false },
        };
        var frame = Recipes.Make(recipe);

        Assert.Equal(topDown != mirrored, frame.Coordinates.Matrix.IsMirrored);
        var checks = 0;
        foreach (var star in frame.Stars.Where(s => !s.IsSaturated).Take(90))
        {
            Assert.True(frame.Coordinates.TrySkyToPixel(star.Direction, out var pixel));
            Assert.InRange(
                double.Hypot(pixel.X - star.Position.X, pixel.Y - star.Position.Y),
                0.0,
                1e-6
            );
            if (!IsAlone(frame, star, 16.0) || star.Electrons < 8000.0)
            {
                continue;
            }

            var (x, y) = Recipes.Middle(frame, pixel.X, pixel.Y, 6);
            Assert.InRange(x, pixel.X - 0.25, pixel.X + 0.25);
            Assert.InRange(y, pixel.Y - 0.25, pixel.Y + 0.25);
            checks++;
        }

        Assert.InRange(checks, 4, 90);
    }

    [Fact]
    public void Make_DistortedLens_CornerIsMovedOutwardsBySoMuch()
    {
        var small = Recipes.Small(1200, 900);
        var recipe = small with { Lens = small.Lens with { DistortionPx = 5.0 } };
        var bent = Recipes.Make(recipe with { Kind = FrameKind.Bias }).Coordinates;
        var plain = Recipes.Make(small with { Kind = FrameKind.Bias }).Coordinates;
        var corner = plain.PixelToSky(new(1200.5, 900.5));

        Assert.True(bent.TrySkyToPixel(corner, out var moved));

        // 5 px along the diagonal of a 4 : 3 frame, one part in 150 less by the motion itself.
        Assert.InRange(moved.X - 1200.5, 3.9, 4.1);
        Assert.InRange(moved.Y - 900.5, 2.9, 3.1);
    }

    [Fact]
    public void Make_PlainLens_PixelsAreThoseOfTheTangentPlane()
    {
        var small = Recipes.Small(1200, 900);
        var frame = Recipes.Make(
            small with
            {
                Kind = FrameKind.Bias,
                Pose = new(SkyDirection.FromDegrees(0.0, 0.0), PositionAngle.FromDegrees(90.0)),
            }
        );

        // Up is east: a place 1 degree east stands tan(1 deg) * 250 / 4.63e-3 pixels above the middle, nothing beside it.
        Assert.True(
            frame.Coordinates.TrySkyToPixel(SkyDirection.FromDegrees(1.0 / 2.0, 0.0), out var pixel)
        );
        Assert.InRange(pixel.X, 600.5 - 1e-6, 600.5 + 1e-6);
        var above = Math.Tan(Math.PI / 360.0) * 250.0 / 4.63e-3;
        Assert.InRange(pixel.Y, 450.5 + above - 1e-6, 450.5 + above + 1e-6);
        Assert.InRange(frame.Pose.PositionAngle.Degrees, 89.9999, 90.0001);
    }

    [Fact]
    public void Make_FastStar_StandsWhereItHasMovedTo()
    {
        // 61 Cygni A, HIP 104214: 4.17"/yr east, 3.27"/yr north (Hipparcos catalogue; from memory).
        var star = StarCatalogue.Embedded.WithHipparcos(104214)!.Value;
        var small = Recipes.Small(500, 400);
        var frame = Recipes.Make(
            small with
            {
                Pose = new(star.Direction, PositionAngle.FromDegrees(0.0)),
                Sky = small.Sky with { FaintStars = false },
            }
        );

        // 26.93 years: 140" in all; the nearest made star is it.
        var found = frame.Stars.MinBy(s =>
            s.Direction.SeparationTo(star.Direction).Arcseconds is > 100.0 and < 200.0
                ? s.VMagnitude
                : 99.0
        );
        Assert.InRange(found.VMagnitude, 5.0, 5.4);
        Assert.InRange(found.Direction.SeparationTo(star.Direction).Arcseconds, 140.0, 145.0);
        Assert.InRange(star.Direction.PositionAngleTo(found.Direction).Degrees, 50.0, 53.5);
    }

    [Fact]
    public void Make_Bias_LevelAndReadNoise()
    {
        var frame = Recipes.Make(Recipes.Small() with { Kind = FrameKind.Bias });

        var (mean, sigma) = Recipes.Statistics(frame.Samples.Select(v => (double)v));
        Assert.Empty(frame.Stars);
        Assert.InRange(mean, 499.9, 500.1);

        // 1.8 electrons over 0.8 electrons a step, and 1/12 for whole numbers.
        Assert.InRange(sigma, 2.24, 2.30);
    }

    [Fact]
    public void Make_Flat_CornersDarkerByTheVignetting()
    {
        var small = Recipes.Small(800, 600);
        var frame = Recipes.Make(
            small with
            {
                Kind = FrameKind.Flat,
                Lens = small.Lens with { Vignetting = 0.4 },
            }
        );

        // Half a well of 50000 electrons in the middle, at 0.8 a step.
        Assert.InRange(Patch(frame, 400, 300), 31_500.0, 32_000.0);
        Assert.InRange((Patch(frame, 6, 6) - 500.0) / (Patch(frame, 400, 300) - 500.0), 0.59, 0.63);
    }

    [Fact]
    public void Make_Clouds_TakeLightFromStars()
    {
        var clear = Recipes.Make(Recipes.Small());
        var cloudy = Recipes.Make(Recipes.Small() with { Sky = new() { Clouds = 0.9 } });

        var ratios = clear
            .Stars.Take(50)
            .Select(star =>
                cloudy.Stars.First(s => s.Direction == star.Direction).Electrons / star.Electrons
            )
            .ToList();
        Assert.InRange(ratios.Average(), 0.2, 0.9);
        Assert.True(ratios.Max() - ratios.Min() > 0.1);
    }

    [Fact]
    public void Make_TwoFrames_HotPixelsAreTheSame()
    {
        var small = Recipes.Small() with { Kind = FrameKind.Dark };
        var dark = small with { Camera = small.Camera with { HotShare = 3e-4 } };

        var first = Hot(Recipes.Make(dark));
        var second = Hot(Recipes.Make(dark with { Seed = 9 }));

        Assert.InRange(first.Count, 100, 250);
        Assert.InRange(first.Intersect(second).Count(), first.Count * 95 / 100, first.Count);

        static List<int> Hot(RehearsedFrame frame) =>
            [.. Enumerable.Range(0, frame.Samples.Length).Where(i => frame.Samples[i] > 540)];
    }

    [Fact]
    public void Make_ColourPattern_SkyAlternates()
    {
        var bare = Recipes.Bare();
        var frame = Recipes.Make(
            bare with
            {
                Camera = bare.Camera with { ColourPattern = "RGGB" },
            }
        );
        var medians = Enumerable
            .Range(0, 4)
            .Select(phase =>
                Enumerable
                    .Range(0, frame.Samples.Length)
                    .Where(i =>
                        i % frame.Width % 2 == phase % 2 && i / frame.Width % 2 == phase / 2
                    )
                    .Select(i => (double)frame.Samples[i])
                    .Order()
                    .ElementAt(frame.Samples.Length / 8)
            )
            .ToArray();

        Assert.InRange(medians[1] - medians[2], -1.0, 1.0);
        Assert.True(medians[1] > medians[0] + 1.0 && medians[1] > medians[3] + 1.0);
    }

    [Fact]
    public void Make_Satellite_LeavesALineAcross()
    {
        var bare = Recipes.Bare() with { Seed = 5 };
        var without = Recipes.Make(bare);
        var with = Recipes.Make(bare with { Sky = bare.Sky with { Satellites = 1 } });

        var brighter = 0;
        for (var i = 0; i < with.Samples.Length; i++)
        {
            brighter += with.Samples[i] > without.Samples[i] + (8.0 * with.Noise) ? 1 : 0;
        }

        Assert.InRange(brighter, 200, 4000);
    }

    [Fact]
    public void Make_Nebula_SameGlowOnFramesThatOverlap()
    {
        var centre = SkyDirection.FromDegrees(39.6, 61.2);
        var bare = Recipes.Bare() with
        {
            Exposure = new() { Start = Recipes.Evening, Seconds = 300.0 },
        };
        var glowing = bare with
        {
            Sky = bare.Sky with { Nebulae = [new(centre, Angle.FromDegrees(0.3), 3.0)] },
        };
        var moved = glowing with
        {
            Pose = new(SkyDirection.FromDegrees(39.7, 61.25), PositionAngle.FromDegrees(120.0)),
            Seed = 3,
        };
        var (one, other) = (Recipes.Make(glowing), Recipes.Make(moved));

        var pairs = new List<(double, double)>();
        for (var i = 0; i < 300; i++)
        {
            var (x, y) = (150 + (i % 20 * 15), 120 + (i / 20 * 15));
            var place = one.Coordinates.PixelToSky(new(x + 1.0, y + 1.0));
            if (
                other.Coordinates.TrySkyToPixel(place, out var pixel)
                && pixel.X is > 10 and < 590
                && pixel.Y is > 10 and < 490
            )
            {
                pairs.Add((Median(one, x, y), Median(other, (int)pixel.X - 1, (int)pixel.Y - 1)));
            }
        }

        var (meanA, sigmaA) = Recipes.Statistics(pairs.Select(p => p.Item1));
        var (meanB, sigmaB) = Recipes.Statistics(pairs.Select(p => p.Item2));
        var correlation =
            pairs.Average(p => (p.Item1 - meanA) * (p.Item2 - meanB)) / (sigmaA * sigmaB);
        Assert.InRange(pairs.Count, 150, 300);
        Assert.InRange(correlation, 0.9, 1.0);
    }

    [Theory]
    [InlineData("RGGB", 2)]
    [InlineData("RGXB", 1)]
    [InlineData("RG", 1)]
    public void Make_ColourPatternThatIsNone_Refused(string pattern, int binning)
    {
        var small = Recipes.Small();
        var recipe = small with
        {
            Camera = small.Camera with { ColourPattern = pattern, Binning = binning },
        };

        Assert.Throws<InvalidOperationException>(() => Recipes.Make(recipe));
    }

    [Fact]
    public void Make_WindowBeyondTheSensor_Refused()
    {
        var small = Recipes.Small(400, 300);
        var recipe = small with { Camera = small.Camera with { Window = new(100, 0, 301, 300) } };

        Assert.Throws<InvalidOperationException>(() => Recipes.Make(recipe));
    }

    private static bool IsAlone(RehearsedFrame frame, FrameStar star, double distance) =>
        star.Position.X > distance
        && star.Position.Y > distance
        && star.Position.X < frame.Width - distance
        && star.Position.Y < frame.Height - distance
        && !frame.Stars.Any(other =>
            other != star
            && other.Electrons > 0.01 * star.Electrons
            && double.Hypot(other.Position.X - star.Position.X, other.Position.Y - star.Position.Y)
                < distance
        );

    private static double Patch(RehearsedFrame frame, int x, int y) =>
        (
            from i in Enumerable.Range(-5, 11)
            from j in Enumerable.Range(-5, 11)
            select Recipes.At(frame, x + i, y + j)
        ).Average();

    private static double Median(RehearsedFrame frame, int x, int y) =>
        (
            from i in Enumerable.Range(-3, 7)
            from j in Enumerable.Range(-3, 7)
            select Recipes.At(frame, x + i, y + j)
        )
            .Order()
            .ElementAt(24);
}
