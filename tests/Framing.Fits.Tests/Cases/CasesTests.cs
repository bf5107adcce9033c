using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Fits.Tests;

/// <summary>
/// Inputs that a framing tool may meet, with the right answers (Data/cases/cases.json, each with its basis). Every case that a
/// FITS file can answer is held here.
/// </summary>
public sealed class CasesTests
{
    private static readonly string[] Answered =
    [
        "F01",
        "F02",
        "F03",
        "F04",
        "F05",
        "F06",
        "F07",
        "F08",
        "F09",
        "F10",
        "F11",
        "F12",
        "F13",
        "F14",
        "F16",
        "F17",
        "F18",
        "F19",
        "F20",
        "F21",
        "F22",
        "F23",
        "F24",
        "F25",
        "F26",
        "F27",
        "F28",
        "F29",
        "F30",
        "F31",
        "F48",
        "F50",
    ];

    private static readonly JsonElement[] All =
    [
        .. TestData.Json("cases", "cases.json").GetProperty("cases").EnumerateArray(),
    ];

    [Fact]
    public void Cases_Counted_AllAreAnswered()
    {
        Assert.Equal(32, All.Length);
        Assert.Equal(All.Select(Id), Answered);
        foreach (
            var (kind, count) in new[]
            {
                ("linear", 3),
                ("distortion", 2),
                ("axes", 2),
                ("hdu", 3),
                ("samples", 3),
            }
        )
        {
            Assert.Equal(
                count,
                All.Count(entry =>
                    Kind(entry) == kind && Answered.Contains(Id(entry), StringComparer.Ordinal)
                )
            );
        }
    }

    [Fact]
    public void Expectations_OfEveryOpenedCase_Hold()
    {
        var held = 0;
        foreach (
            var entry in All.Where(entry => Answered.Contains(Id(entry), StringComparer.Ordinal))
        )
        {
            var expect = entry.GetProperty("expect");
            if (
                expect.TryGetProperty("refuse", out _)
                || Id(entry) is "F28" or "F26" or "F05" or "F03"
            )
            {
                continue;
            }

            using var file = Open(entry);
            held += Held(Id(entry), expect, file);
        }

        // Every expectation that a picture and its solution can answer: positions, pixels, angles, corners, samples.
        Assert.Equal(74, held);
    }

    [Theory]
    [InlineData("F27")]
    [InlineData("F28")]
    [InlineData("F30")]
    public void Open_DamagedFile_RefusesInOneLineThatNamesThePlace(string id)
    {
        var entry = All.Single(entry => Id(entry) == id);
        var expect = entry.GetProperty("expect");
        var outcome = expect.TryGetProperty("any_of", out var any) ? any[0] : expect;

        var problem = Assert.Throws<UnreadableFileException>(() => Open(entry).Dispose());

        Assert.Contains(
            outcome.GetProperty("names_any").EnumerateArray(),
            word => problem.Message.Contains(word.GetString()!, StringComparison.OrdinalIgnoreCase)
        );
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Fact]
    public void Solution_CdAllZero_IsNoneWithAWarning()
    {
        var solution = Solution("F03");

        Assert.Null(solution.Coordinates);
        Assert.Contains("CD matrix", Assert.Single(solution.Warnings), StringComparison.Ordinal);
        Assert.Contains("CD1_1", solution.WhyNone, StringComparison.Ordinal);
    }

    [Fact]
    public void Solution_SipTermsUnderPlainCtype_AreNotUsedAndSaidSo()
    {
        var solution = Solution("F05");

        // The case's second outcome: terms not used.
        AssertSky(304.3859124, 36.1839762, solution.Coordinates!.PixelToSky(new(3, 38)));
        Assert.Equal(DistortionKind.Sip, solution.Distortion);
        Assert.False(solution.DistortionUsed);
        Assert.Contains(
            solution.Warnings,
            text => text.Contains("A_ORDER", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Open_NoSpaceAfterEquals_ReadsTheValueAndWarns()
    {
        using var file = Open(All.Single(entry => Id(entry) == "F26"));

        var place = WorldCoordinatesReader.Read(file.Header).Coordinates!.PixelToSky(new(10, 33));

        AssertSky(214.3525225, 52.9939529, place);
        Assert.Contains(file.Warnings, text => text.Contains("CRVAL1", StringComparison.Ordinal));
    }

    [Fact]
    public void Frame_OfAnotherEquinox_IsNamedAndCarriedToIcrs()
    {
        var solution = Solution("F13");

        Assert.Equal("FK5, equinox 2026.4", solution.Frame.ToString());
        Assert.False(solution.Frame.IsLikeIcrs);
        Assert.Contains(
            solution.Warnings,
            text => text.Contains("2026.4", StringComparison.Ordinal)
        );
        AssertSky(52.31, 88.714, solution.AsWritten!.PixelToSky(new(30.5, 20.5)));

        // The case's own tolerance: 3 arcsec, precession of IAU 2006 there.
        Assert.InRange(
            solution
                .Coordinates!.PixelToSky(new(30.5, 20.5))
                .SeparationTo(SkyDirection.FromDegrees(47.152857, 88.6189256))
                .Arcseconds,
            0.0,
            3.0
        );
    }

    [Fact]
    public void Frame_EquinoxWithoutRadesys_IsFk5()
    {
        var solution = Solution("F14");

        Assert.Equal(new("FK5", 2000.0), solution.Frame);
        Assert.True(solution.Frame.IsLikeIcrs);
        Assert.Empty(solution.Warnings);
    }

    [Fact]
    public void Text_LongString_IsJoinedOverItsContinueCards()
    {
        var entry = All.Single(entry => Id(entry) == "F22");
        using var file = Open(entry);

        Assert.Equal(
            entry.GetProperty("expect").GetProperty("object").GetString(),
            file.Header.Text("OBJECT")
        );
        Assert.Equal("working title", file.Header.Find("OBJECT")!.Comment);
    }

    [Fact]
    public void Text_OtherBytes_AreReadAndToldOf()
    {
        using var file = Open(All.Single(entry => Id(entry) == "F24"));

        Assert.Equal("Sjöfn Ärlund", file.Header.Text("OBSERVER"));
        Assert.Contains(file.Warnings, text => text.Contains("OBSERVER", StringComparison.Ordinal));
    }

    [Fact]
    public void Numbers_WhereTheDecimalMarkIsAComma_AreReadWithAPoint()
    {
        var entry = All.Single(entry => Id(entry) == "F25");
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = comma;
            using var file = Open(entry);
            Assert.Equal(1, Held("F25", entry.GetProperty("expect"), file));
            Assert.Contains(
                "0.5",
                new FitsHeaderBuilder().Add("CRPIX1", 0.5).ToText(),
                StringComparison.Ordinal
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static HeaderSolution Solution(string id)
    {
        using var file = Open(All.Single(entry => Id(entry) == id));
        return WorldCoordinatesReader.Read(file.Header);
    }

    private static string Id(JsonElement entry) => entry.GetProperty("id").GetString()!;

    private static string Kind(JsonElement entry) => entry.GetProperty("kind").GetString()!;

    private static FitsFile Open(JsonElement entry) =>
        FitsFile.Open(TestData.Path("cases", entry.GetProperty("file").GetString()!));

    private static int Held(string id, JsonElement expect, FitsFile file)
    {
        var image = file.RequireImage();
        var world = WorldCoordinatesReader.Read(file.Header).Coordinates;
        return expect
            .EnumerateObject()
            .Count(item => CaseExpectation.Holds(id, item, image, world));
    }

    private static void AssertSky(double ra, double dec, SkyDirection place) =>
        Assert.InRange(place.SeparationTo(SkyDirection.FromDegrees(ra, dec)).Arcseconds, 0.0, 1.0);
}
