using System.Globalization;
using System.Text;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Workshop.Tests;

/// <summary>The FITS tables are astropy's: see tests/reference/star-tables.</summary>
public sealed class StarTableFileTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("framing-stars-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void ReadRows_OfACsv_TakesPlacesAndPassesOverTheRest()
    {
        var path = Write(
            "# deep field\nname,RA,Dec,note,Mag\n\"a\",40.5,-62.25,,12.5\nb,40.6,-62.3,x,\n"
        );
        var star = Assert.Single(StarTableFile.ReadRows(path));
        Assert.Equal(40.5, star.Direction.RightAscension.Degrees, 10);
        Assert.Equal(-62.25, star.Direction.Declination.Degrees, 10);
        Assert.Equal(12.5, star.Magnitude);
        Assert.Null(star.Motion);
    }

    [Fact]
    public void ReadRows_OfABinaryTable_BringsThePlacesBackTo2000()
    {
        var stars = StarTableFile.ReadRows(Data("motions.fits"));

        // One of the sixty has no magnitude.
        Assert.Equal(59, stars.Count);
        var last = stars[^1];
        Assert.Equal(12.18, last.Magnitude, 5);
        Assert.Equal(3.0, last.Motion!.Value.RightAscensionCosDeclination.Arcseconds, 6);
        Assert.Equal(-2.0, last.Motion.Value.Declination.Arcseconds, 6);

        // 16 years: 48 arcsec to the west and 32 to the north of the place at 2016.0.
        var then = SkyDirection.FromDegrees(40.59, 62.0 - (0.005 * 59));
        Assert.Equal(
            -48.0,
            (last.Direction.RightAscension - then.RightAscension).Arcseconds
                * Math.Cos(then.Declination.Radians),
            0.02
        );
        Assert.Equal(32.0, (last.Direction.Declination - then.Declination).Arcseconds, 0.02);
    }

    [Fact]
    public void ReadRows_OfATextTable_TakesItsNumbers()
    {
        var stars = StarTableFile.ReadRows(Data("text.fits"));
        Assert.Equal(60, stars.Count);
        Assert.Equal(40.07, stars[7].Direction.RightAscension.Degrees, 7);
        Assert.Equal(61.965, stars[7].Direction.Declination.Degrees, 7);
        Assert.Equal(11.14, stars[7].Magnitude, 10);
    }

    [Fact]
    public void Read_JoinsTheEmbeddedStarsOfThatPart()
    {
        Assert.InRange(StarTableFile.Read(Data("text.fits")).Count, 60, 2000);
    }

    [Theory]
    [InlineData("hours.fits", "TUNIT1 = 'h': the column ra has to be in degrees (deg).")]
    [InlineData("nothing.fits", "no table of it has the columns ra_deg, dec_deg and mag")]
    public void Read_OfAnUnfitFitsTable_SaysWhat(string name, string words)
    {
        var wrong = Assert.Throws<InputException>(() => StarTableFile.Read(Data(name)));
        Assert.Contains(words, wrong.Message, StringComparison.Ordinal);
        Assert.Contains(name, wrong.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "it is empty; its first line names the columns: ra_deg, dec_deg and mag")]
    [InlineData("ra,dec\n1,2\n", "line 1: \"ra,dec\" does not name the columns")]
    [InlineData("ra,dec,mag\n1,2,3\n1,x,3\n", "line 3: \"x\" is no number")]
    [InlineData("ra,dec,mag\n1,2\n", "line 2: there are 2 cells; one in column 3 is wanted.")]
    [InlineData("ra,dec,mag\n1,2,3\n", "it has 1 stars with place and magnitude; 20 and more")]
    [InlineData("ra,dec,mag\n400,2,3\n", "line 2: ra is 400")]
    [InlineData("ra,dec,mag\n40,-92,3\n", "line 2: dec is -92")]
    public void Read_OfAnUnfitCsv_SaysWhatAndWhere(string text, string words)
    {
        var path = Write(text);
        var wrong = Assert.Throws<InputException>(() => StarTableFile.Read(path));
        Assert.Contains(words, wrong.Message, StringComparison.Ordinal);
        Assert.StartsWith(path, wrong.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', wrong.Message);
    }

    [Fact]
    public void Read_OfManyRows_KeepsThemAll()
    {
        var text = new StringBuilder("ra_deg,dec_deg,mag\n");
        for (var i = 0; i < 3000; i++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{40.0 + (0.001 * (i % 60))},{62.0 + (0.001 * (i / 60.0))},{14.0 + (i / 3000.0)}\n"
            );
        }

        Assert.InRange(StarTableFile.Read(Write(text.ToString())).Count, 3000, 3500);
    }

    private static string Data(string name) =>
        Path.Combine(
            TestFolders.Root,
            "tests",
            "Framing.Workshop.Tests",
            "Data",
            "star-tables",
            name
        );

    private string Write(string text)
    {
        var path = Path.Combine(folder.FullName, "stars.csv");
        File.WriteAllText(path, text);
        return path;
    }
}
