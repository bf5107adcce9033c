using Framing.Fits;

namespace Framing.Imaging.Tests.StarFinding;

public sealed class StarFinderTests
{
    [Theory]
    [InlineData(0.7, 250)]
    [InlineData(1.2, 250)]
    [InlineData(2.5, 200)]
    [InlineData(4.0, 80)]
    public void Find_StarsOfAnyWidth_AllFoundToATenthOfAPixel(double sigma, int count)
    {
        var sky = new DrawnSky(1200, 900, 800.0, 12.0, 1).Strew(count, sigma, 14.0 * sigma);

        var found = sky.Find();

        var (hits, wrong, rms, pull) = sky.Compare(found, leastSignalToNoise: 30.0);
        Assert.Equal(StarVerdict.Stars, found.Verdict);
        Assert.InRange(hits, count * 98 / 100, count);
        Assert.InRange(wrong, 0, 1);
        Assert.InRange(rms, 0.0, 0.1);
        Assert.InRange(pull, 0.5, 1.4);
        Assert.InRange(found.Noise, 11.5, 12.5);
        Assert.InRange(found.Background, 799.0, 802.0);
        Assert.InRange(found.TypicalWidthPx!.Value, 2.1 * sigma, 2.7 * sigma);
        Assert.InRange(found.TypicalElongation!.Value, 1.0, 1.2);
    }

    [Fact]
    public void Find_Fluxes_AreThoseDrawnAndBrightFirst()
    {
        var sky = new DrawnSky(900, 900, 500.0, 8.0, 2).Strew(150, 1.3, 30.0);

        var found = sky.Find();

        for (var i = 1; i < found.Stars.Count; i++)
        {
            Assert.True(found.Stars[i].Flux <= found.Stars[i - 1].Flux);
        }

        foreach (var star in found.Stars.Take(40))
        {
            var drawn = sky.Truth.MinBy(s =>
                double.Hypot(s.X - star.Position.X, s.Y - star.Position.Y)
            );

            // A circle of 1.5 full widths holds nearly all of a bell.
            Assert.InRange(star.Flux / drawn.Flux, 0.95, 1.05);
        }
    }

    [Fact]
    public void Find_HotPixels_AreNoStars()
    {
        var sky = new DrawnSky(1000, 800, 600.0, 10.0, 3).Strew(100, 1.1, 20.0);
        for (var i = 0; i < 500; i++)
        {
            sky[(int)sky.Between(0, 1000), (int)sky.Between(0, 800)] += (float)
                sky.Between(100.0, 30000.0);
        }

        var found = sky.Find();

        var (hits, wrong, _, _) = sky.Compare(found);
        Assert.InRange(hits, 97, sky.Truth.Count);
        Assert.InRange(wrong, 0, 3);
        Assert.InRange(found.HotPixels, 400, 520);
    }

    [Fact]
    public void Find_TwoSatellites_AreLinesAndNoStars()
    {
        var sky = new DrawnSky(1200, 900, 600.0, 10.0, 4).Strew(150, 1.2, 20.0);
        var picture = sky;
        for (var x = 0; x < 1200; x++)
        {
            foreach (var (start, slope) in new[] { (100.0, 0.4), (820.0, -0.21) })
            {
                var middle = start + (slope * x);
                for (var y = (int)middle - 5; y <= (int)middle + 6; y++)
                {
                    picture[x, y] += (float)(
                        120.0 * Math.Exp(-0.5 * Math.Pow((y - middle) / 1.3, 2.0))
                    );
                }
            }
        }

        var found = sky.Find();

        var (hits, wrong, _, _) = sky.Compare(found);
        Assert.InRange(found.Trails, 1, 6);
        Assert.InRange(hits, 140, sky.Truth.Count);
        Assert.InRange(wrong, 0, 6);
    }

    [Fact]
    public void Find_TrailedFrame_StarsFoundAndToldToBeLong()
    {
        var sky = new DrawnSky(1200, 900, 600.0, 10.0, 5).Strew(120, 1.3, 40.0, 3.0, 0.6);

        var found = sky.Find();

        var (hits, wrong, _, _) = sky.Compare(found, 3.0);
        Assert.InRange(hits, 112, sky.Truth.Count);
        Assert.InRange(wrong, 0, 3);
        Assert.InRange(found.TypicalElongation!.Value, 2.3, 3.6);
        Assert.InRange(found.Stars[5].ElongationDirection.Radians, 0.5, 0.7);
    }

    [Fact]
    public void Find_SaturatedStars_PlacedAndMarked()
    {
        var sky = new DrawnSky(900, 900, 1000.0, 20.0, 6).Strew(100, 1.3, 60.0);
        for (var i = 0; i < 8; i++)
        {
            sky.Star(60.0 + (100.3 * i), 450.7, 3e7, 2.0);
        }

        var found = sky.Find();

        Assert.InRange(found.Stars.Count(star => star.IsSaturated), 8, 12);
        for (var i = 0; i < 8; i++)
        {
            var nearest = found.Stars.Min(star =>
                double.Hypot(star.Position.X - 60.0 - (100.3 * i), star.Position.Y - 450.7)
            );
            Assert.InRange(nearest, 0.0, 0.25);
        }
    }

    [Fact]
    public void Find_PairCloserThanThreeWidths_BothFoundAndMarked()
    {
        var sky = new DrawnSky(600, 600, 500.0, 5.0, 7).Strew(60, 1.3, 30.0);
        sky.Star(300.2, 300.4, 20000.0, 1.3);
        sky.Star(305.4, 301.1, 12000.0, 1.3);

        var found = sky.Find();

        var pair = found
            .Stars.Where(star =>
                double.Hypot(star.Position.X - 303.0, star.Position.Y - 301.0) < 4.0
            )
            .ToArray();
        Assert.Equal(2, pair.Length);
        Assert.All(pair, star => Assert.True(star.IsBlended));
        Assert.InRange(pair[0].Position.X, 300.0, 300.5);
    }

    [Fact]
    public void Find_StrongVignettingAndNebula_NoFalseStars()
    {
        var sky = new DrawnSky(1200, 900, 0.0, 12.0, 8).Strew(150, 1.3, 25.0);
        for (var y = 0; y < 900; y++)
        {
            for (var x = 0; x < 1200; x++)
            {
                var r = double.Hypot(x - 600.0, y - 450.0) / 750.0;
                var knots =
                    10.0
                    * (1.0 + Math.Sin(x / 9.0) + Math.Cos((y + x) / 11.0))
                    * Math.Exp(-Math.Pow((x - 500.0) / 200.0, 2.0));
                sky[x, y] += (float)((4000.0 * (1.0 - (0.7 * r * r))) + knots);
            }
        }

        var found = sky.Find();

        var (hits, wrong, _, _) = sky.Compare(found);
        Assert.InRange(hits, 130, sky.Truth.Count);
        Assert.InRange(wrong, 0, 4);
    }

    [Fact]
    public void Find_UndefinedSamplesAndBlackBorder_NoFalseStars()
    {
        var sky = new DrawnSky(1000, 800, 900.0, 10.0, 9).Strew(150, 1.3, 25.0);
        for (var y = 0; y < 800; y++)
        {
            for (var x = 0; x < 1000; x++)
            {
                if (x < 90 || y > 730 + (x / 40))
                {
                    sky[x, y] = 0f;
                }
                else if (double.Hypot(x - 700.0, y - 300.0) < 60.0 || (x == 400 && y > 300))
                {
                    sky[x, y] = float.NaN;
                }
            }
        }

        var found = sky.Find(SampleFormat.Float32);

        var (hits, wrong, _, _) = sky.Compare(found);
        Assert.InRange(hits, 110, sky.Truth.Count);
        Assert.InRange(wrong, 0, 2);
        Assert.DoesNotContain(found.Stars, star => star.Position.X < 88.0);
    }

    [Fact]
    public void Find_EightBits_StarsFound()
    {
        var sky = new DrawnSky(1000, 800, 20.0, 0.6, 10);
        for (var i = 0; i < 80; i++)
        {
            sky.Star(20.0 + (12.0 * i), 30.0 + ((37.0 * i) % 740.0), 25.0 * (i + 4.0), 1.3);
        }

        var found = sky.Find(SampleFormat.UInt8);

        var (hits, wrong, rms, _) = sky.Compare(found, leastSignalToNoise: 50.0);
        Assert.InRange(hits, 76, sky.Truth.Count);
        Assert.InRange(wrong, 0, 3);
        Assert.InRange(rms, 0.0, 0.1);
    }

    [Fact]
    public void Find_ColourFilter_SeenAndPlacesUnmovedByColour()
    {
        // Red, green, green and blue sky of their own; stars red, white and blue.
        var sky = new DrawnSky(1000, 800, 500.0, 6.0, 11);
        for (var y = 0; y < 800; y++)
        {
            for (var x = 0; x < 1000; x++)
            {
                sky[x, y] += Pattern(x, y) switch
                {
                    0 => 100f,
                    1 => 260f,
                    _ => 40f,
                };
            }
        }

        for (var i = 0; i < 90; i++)
        {
            var tint = i % 3;
            sky.Star(
                30.0 + (10.37 * i),
                30.0 + ((53.71 * i) % 740.0),
                9000.0,
                1.6,
                colour: (x, y) =>
                    (tint, Pattern(x, y)) switch
                    {
                        (0, 0) => 1.5,
                        (0, 2) => 0.4,
                        (2, 0) => 0.4,
                        (2, 2) => 1.5,
                        _ => 1.0,
                    }
            );
        }

        var found = sky.Find();

        Assert.True(found.HasColourFilter);
        var (hits, wrong, rms, _) = sky.Compare(found, leastSignalToNoise: 30.0);
        Assert.InRange(hits, 86, sky.Truth.Count);
        Assert.InRange(wrong, 0, 2);
        Assert.InRange(rms, 0.0, 0.1);

        static int Pattern(int x, int y) => (x & 1) + (y & 1);
    }

    [Fact]
    public void Find_GreyFrame_IsNotTakenForAColourFilter()
    {
        var sky = new DrawnSky(900, 700, 700.0, 9.0, 12).Strew(100, 1.2, 20.0);

        Assert.False(sky.Find().HasColourFilter);
    }

    [Fact]
    public void Find_PictureAveragedDown_PlacesInPixelsOfTheFile()
    {
        var sky = new DrawnSky(1200, 900, 700.0, 9.0, 13).Strew(60, 3.0, 60.0);

        var found = DrawnSky.Find(sky.Picture(SampleFormat.Float32).Reduced(2));

        var (hits, wrong, rms, _) = sky.Compare(found, leastSignalToNoise: 40.0);
        Assert.Equal(1200, found.WidthPx);
        Assert.InRange(hits, 57, sky.Truth.Count);
        Assert.InRange(wrong, 0, 1);
        Assert.InRange(rms, 0.0, 0.15);
    }

    [Fact]
    public void Find_TwiceTheSame_SameStars()
    {
        var picture = new DrawnSky(900, 700, 700.0, 9.0, 14).Strew(100, 1.2, 8.0).Picture();

        Assert.Equal(DrawnSky.Find(picture).Stars, DrawnSky.Find(picture).Stars);
    }

    [Fact]
    public void Find_MostStars_AreTheBrightest()
    {
        var picture = new DrawnSky(900, 700, 700.0, 9.0, 15).Strew(100, 1.2, 20.0).Picture();

        var all = DrawnSky.Find(picture);
        var few = DrawnSky.Find(picture, 10);

        Assert.Equal(all.Stars.Take(10), few.Stars);
    }
}
