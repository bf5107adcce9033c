using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Solving.Tests;

public sealed class ReferenceStarsTests
{
    [Fact]
    public void Embedded_HoldsTheCatalogue_BrightestFirst()
    {
        var stars = ReferenceStars.Embedded;
        Assert.Equal(StarCatalogue.Embedded.Count, stars.Count);
        for (var star = 1; star < stars.Count; star++)
        {
            Assert.True(stars.Magnitudes[star] >= stars.Magnitudes[star - 1]);
        }
    }

    [Fact]
    public void At_AnEpoch_IsWhereTheCatalogueHasTheStar()
    {
        // Sirius, alpha Centauri and Arcturus are among the ten brightest and move by arcseconds a year.
        var listed = StarCatalogue.Embedded.InCone(
            SkyDirection.NorthPole,
            Angle.FromDegrees(180.0),
            new() { MostStars = 200 }
        );
        for (var star = 0; star < listed.Count; star++)
        {
            var off = ReferenceStars
                .Embedded.At(star, 2026.9)
                .SeparationTo(listed[star].At(2026.9));
            Assert.InRange(off.Arcseconds, 0.0, 0.001);
        }

        Assert.True(
            ReferenceStars
                .Embedded.At(0, 2026.9)
                .SeparationTo(ReferenceStars.Embedded.At(0, 2000.0))
                .Arcseconds > 30.0
        );
    }

    [Fact]
    public void Quads_OfTheBrightestStars_HoldTheFainterOfThem()
    {
        // Every star but the first few is the faintest of its quads.
        var index = ReferenceStars.Embedded.Index(0);
        Assert.InRange(index.Count, 6.9 * index.Level.To, 7.0 * index.Level.To);
        Span<int> four = stackalloc int[4];
        var random = new Random(9);
        for (var i = 0; i < 500; i++)
        {
            var star = random.Next(100, index.Level.To);
            index.Stars((uint)((7 * star) + random.Next(7)), four);
            var members = four.ToArray();
            Assert.Equal(star, members.Max());
            Assert.Equal(4, members.Distinct().Count());
        }
    }

    [Fact]
    public void FromTable_WithAStarOfTheCatalogue_KeepsOne()
    {
        var known = StarCatalogue.Embedded.InCone(
            SkyDirection.FromDegrees(84.0, -5.4),
            Angle.FromDegrees(1.0)
        );
        var table = known
            .Select(star => new TableStar(star.Direction, star.VMagnitude + 0.3))
            .Append(new TableStar(SkyDirection.FromDegrees(84.0, -5.0), 13.0))
            .ToList();
        var stars = ReferenceStars.FromTable(table);
        var near = Enumerable
            .Range(0, stars.Count)
            .Count(star =>
                stars.At(star, 2000.0).SeparationTo(SkyDirection.FromDegrees(84.0, -5.4))
                <= Angle.FromDegrees(1.0)
            );
        Assert.Equal(known.Count + 1, near);
    }

    [Fact]
    public void FromTable_OfAStarWithoutBrightness_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            ReferenceStars.FromTable([new(SkyDirection.NorthPole, double.NaN)])
        );
}
