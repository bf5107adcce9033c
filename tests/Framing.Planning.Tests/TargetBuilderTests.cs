using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class TargetBuilderTests
{
    [Fact]
    public void FromEntries_OfAnEllipse_KeepsAxesAndAngle()
    {
        // deep-sky.csv: IC 1848, 114′ x 59′, position angle 70°.
        var target = Of("IC 1848");
        Assert.Equal("Soul Nebula", target.Name);
        Assert.Empty(target.Notes);
        var centre = SkyDirection.FromDegrees(43.832, 60.447);
        var farthest = target.Outline.Corners.MaxBy(corner => corner.SeparationTo(centre).Radians);
        Assert.Equal(57.0, farthest.SeparationTo(centre).Arcminutes, 0.1);

        // Of 96 corners the farthest stand half a step from the long axis: about 1° here.
        Assert.Equal(
            0.0,
            PositionAngle.FromDegrees(70.0).FrameTurnTo(centre.PositionAngleTo(farthest)).Degrees,
            1.0
        );
        var nearest = target.Outline.Corners.Min(corner => corner.SeparationTo(centre).Arcminutes);
        Assert.Equal(29.5, nearest, 0.1);
    }

    [Fact]
    public void FromEntries_WhenTheAngleIsNotKnown_FramesACircleAndSaysSo()
    {
        // deep-sky.csv: IC 1805, 140′ x 118′, no angle.
        var target = Of("IC 1805");
        var note = Assert.Single(target.Notes);
        Assert.Contains("140′ by 118′", note, StringComparison.Ordinal);
        var centre = SkyDirection.FromDegrees(38.475, 61.341);
        Assert.All(
            target.Outline.Corners,
            corner => Assert.Equal(70.0, corner.SeparationTo(centre).Arcminutes, 0.1)
        );
    }

    [Fact]
    public void FromEntries_OfAGroup_TakesItsMembers()
    {
        var target = Of("Heart and Soul Nebulae");
        Assert.Equal(["Heart Nebula", "Soul Nebula"], target.Parts.Select(part => part.Name));
        Assert.Equal(2, target.Outline.Areas.Count);
    }

    [Fact]
    public void FromEntries_OfSeveral_JoinsNamesAndOutlines()
    {
        var target = Of("IC 1805", "IC 1848", "NGC 281");
        Assert.Equal("Heart Nebula, Soul Nebula and Pacman Nebula", target.Name);
        Assert.Equal(3, target.Outline.Areas.Count);
    }

    [Fact]
    public void FromEntries_OfAStar_FramesAPointWhereItStandsThen()
    {
        // Barnard's star, HIP 87937, moves 10.4″ a year (Hipparcos catalogue).
        var target = Of("HIP 87937");
        Assert.Contains("a star", Assert.Single(target.Notes), StringComparison.Ordinal);
        var before = ((NamedStar)ObjectCatalogue.Embedded.Find("HIP 87937").Entry!).Star.Direction;
        Assert.Equal(27.0 * 10.4, target.Outline.Middle.SeparationTo(before).Arcseconds, 10.0);
    }

    [Theory]
    [InlineData("IC 1805", "140′ by 118′: a circle of 140′ is framed")]
    [InlineData("M 57", null)]
    public void FromEntries_OfAnAngleThatIsNotKnown_SaysSoWhereItMatters(string name, string? words)
    {
        var notes = Of(name).Notes;
        if (words is null)
        {
            Assert.Empty(notes);
        }
        else
        {
            Assert.Contains(words, Assert.Single(notes), StringComparison.Ordinal);
        }
    }

    private static Target Of(params string[] names) =>
        TargetBuilder.FromEntries(
            [.. names.Select(name => (ObjectCatalogue.Embedded.Find(name).Entry!, name))],
            name => ObjectCatalogue.Embedded.Find(name).Entry,
            2027.0
        );
}
