using System.Text.Json;

namespace Framing.Sky.Tests;

/// <summary>Random headers in all three forms, answered by wcslib (tests/reference/wcs/make_answers.py).</summary>
public sealed class HeaderAnswersTests
{
    private static readonly List<JsonElement> Answers =
    [
        .. TestData.Json("wcs-headers.json").GetProperty("answers").EnumerateArray(),
    ];

    [Fact]
    public void File_HoldsEveryFormParityAndPole()
    {
        Assert.Equal(300, Answers.Count);
        var cards = Answers.ConvertAll(answer => answer.GetProperty("cards"));
        Assert.Equal(100, cards.Count(item => item.TryGetProperty("CROTA2", out _)));
        Assert.Equal(100, cards.Count(item => item.TryGetProperty("PC1_1", out _)));
        Assert.Equal(100, cards.Count(item => item.TryGetProperty("CD1_1", out _)));
        Assert.InRange(cards.Count(item => Matrix(item).IsMirrored), 100, 200);
        Assert.InRange(cards.Count(item => Math.Abs(Card(item, "CRVAL2")) > 87.9), 30, 60);
        Assert.Contains(
            cards,
            item => IsAtNorthPole(item) && !item.TryGetProperty("LONPOLE", out _)
        );
        Assert.Contains(
            cards,
            item => IsAtNorthPole(item) && item.TryGetProperty("LONPOLE", out _)
        );
    }

    [Fact]
    public void PixelToSky_EveryAnswer_IsWithinAMillionthOfAnArcsecond()
    {
        var compared = 0;
        foreach (var answer in Answers)
        {
            var cards = answer.GetProperty("cards");
            var world = new TanWorldCoordinates(
                new(Card(cards, "CRPIX1"), Card(cards, "CRPIX2")),
                SkyDirection.FromDegrees(Card(cards, "CRVAL1"), Card(cards, "CRVAL2")),
                Matrix(cards)
            );
            foreach (
                var (pixel, sky) in answer
                    .GetProperty("pixels")
                    .EnumerateArray()
                    .Zip(answer.GetProperty("sky").EnumerateArray())
            )
            {
                var expected = SkyDirection.FromDegrees(sky[0].GetDouble(), sky[1].GetDouble());
                var at = new PixelPosition(pixel[0].GetDouble(), pixel[1].GetDouble());
                var off = world.PixelToSky(at).SeparationTo(expected).Arcseconds;
                Assert.True(off < 1e-6, FormattableString.Invariant($"{off} arcsec: {cards}"));
                Assert.True(world.TrySkyToPixel(expected, out var back));
                Assert.Equal(at.X, back.X, 1e-5);
                Assert.Equal(at.Y, back.Y, 1e-5);
                compared++;
            }
        }

        Assert.Equal(1500, compared);
    }

    private static PixelMatrix Matrix(JsonElement cards)
    {
        var matrix =
            cards.TryGetProperty("CD1_1", out _)
                ? new(
                    Card(cards, "CD1_1"),
                    Card(cards, "CD1_2"),
                    Card(cards, "CD2_1"),
                    Card(cards, "CD2_2")
                )
            : cards.TryGetProperty("PC1_1", out _)
                ? PixelMatrix.FromPc(
                    Card(cards, "CDELT1"),
                    Card(cards, "CDELT2"),
                    new(
                        Card(cards, "PC1_1"),
                        Card(cards, "PC1_2"),
                        Card(cards, "PC2_1"),
                        Card(cards, "PC2_2")
                    )
                )
            : PixelMatrix.FromRotation(
                Card(cards, "CDELT1"),
                Card(cards, "CDELT2"),
                Angle.FromDegrees(Card(cards, "CROTA2"))
            );
        var lonPole =
            cards.TryGetProperty("LONPOLE", out var card) ? card.GetDouble()
            : IsAtNorthPole(cards) ? 0.0
            : 180.0;
        return matrix.WithLonPole(Angle.FromDegrees(lonPole));
    }

    private static bool IsAtNorthPole(JsonElement cards) => Card(cards, "CRVAL2") >= 90.0;

    private static double Card(JsonElement cards, string key) => cards.GetProperty(key).GetDouble();
}
