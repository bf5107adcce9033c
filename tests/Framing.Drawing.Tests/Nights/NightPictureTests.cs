using Framing.Nights;
using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class NightPictureTests
{
    public static TheoryData<double, int, int, PictureSize, PicturePalette> Nights() =>
        new()
        {
            { 46.2, 12, 5, default, PicturePalette.Day },
            { 46.2, 12, 5, new(640, 400), PicturePalette.Night },
            { 52.0, 6, 21, default, PicturePalette.Day },
            { 46.2, 10, 24, default, PicturePalette.Day },
            { 46.2, 3, 28, new(3200, 2000), PicturePalette.Day },
            { 69.7, 6, 21, default, PicturePalette.Day },
            { 69.7, 12, 21, default, PicturePalette.Night },
            { -90.0, 6, 21, new(320, 200), PicturePalette.Day },
        };

    [Theory]
    [MemberData(nameof(Nights), DisableDiscoveryEnumeration = true)]
    public void Compose_AnyNight_NoTextMeetsAnother(
        double latitude,
        int month,
        int day,
        PictureSize size,
        PicturePalette palette
    )
    {
        var picture = NightPicture.Compose(Plan(latitude, month, day), "A night", size, palette);
        Assert.Equal(size.Width, picture.Size.Width);
        var labels = picture.Labels;
        Assert.NotEmpty(labels);
        for (var i = 0; i < labels.Count; i++)
        {
            Assert.True(labels[i].Left >= 0.0 && labels[i].Right <= size.Width, labels[i].Text);
            Assert.True(labels[i].Bottom <= picture.Size.Height, labels[i].Text);
            for (var j = 0; j < i; j++)
            {
                Assert.False(
                    labels[i].Left < labels[j].Right
                        && labels[j].Left < labels[i].Right
                        && labels[i].Top < labels[j].Bottom
                        && labels[j].Top < labels[i].Bottom,
                    $"{labels[i].Text} meets {labels[j].Text}"
                );
            }
        }
    }

    [Fact]
    public void Compose_AWinterNight_ShowsBothClocksAndEveryPanel()
    {
        var plan = Plan(46.2, 12, 5);
        var texts = Texts(plan);
        Assert.Contains("UTC", texts);
        Assert.Contains(
            texts,
            text =>
                text.StartsWith(
                    "Time at the site (Europe/Zurich, UTC+01:00)",
                    StringComparison.Ordinal
                )
        );
        Assert.Contains(
            texts,
            text => text.StartsWith("dark 18:30–06:07 (17:30–05:07 UTC)", StringComparison.Ordinal)
        );
        Assert.Contains("setting up", texts);
        foreach (var block in plan.Blocks)
        {
            Assert.Contains(
                FormattableString.Invariant($"{block.Panel}  {block.Filter.Name}"),
                texts
            );
        }
    }

    [Theory]
    [InlineData(10, 24, "the clocks go back from 03:00 to 02:00", "02:00+02:00", "02:00+01:00")]
    [InlineData(3, 28, "the clocks go forward from 02:00 to 03:00", "01:00+01:00", "03:00+02:00")]
    public void Compose_WhereTheClockIsSet_NamesItAndWritesEveryOffset(
        int month,
        int day,
        string words,
        string before,
        string after
    )
    {
        var texts = Texts(Plan(46.2, month, day));
        Assert.Contains(words, texts);
        Assert.Contains(before, texts);
        Assert.Contains(after, texts);
    }

    [Fact]
    public void Compose_Midsummer_SaysThatItIsNeverDark() =>
        Assert.Contains(
            Texts(Plan(52.0, 6, 21)),
            text => text.StartsWith("never quite dark; below −12° ", StringComparison.Ordinal)
        );

    [Fact]
    public void Compose_ManyNights_DrawsTheFirstSevenAndSaysSo()
    {
        var plan = Plan(46.2, 12, 5, nights: 9);
        Assert.Contains("the first 7 of 9 nights", Texts(plan));
        Assert.Equal(
            7,
            Texts(plan).Count(text => text.EndsWith("December 2026", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void ToPngAndToSvg_Twice_SameBytes()
    {
        var plan = Plan(46.2, 12, 5);
        var (one, other) = (
            NightPicture.Compose(plan, "A night"),
            NightPicture.Compose(plan, "A night")
        );
        Assert.Equal(one.ToPng(), other.ToPng());
        Assert.Equal(one.ToSvg(), other.ToSvg());
        Assert.DoesNotContain("NaN", one.ToSvg(), StringComparison.Ordinal);
    }

    private static List<string> Texts(PlannedNights plan) =>
        [.. NightPicture.Compose(plan, "A night").Labels.Select(label => label.Text)];

    private static PlannedNights Plan(double latitude, int month, int day, int nights = 1) =>
        NightsStep.Plan(
            new()
            {
                Site = new(
                    Angle.FromDegrees(latitude),
                    Angle.FromDegrees(8.1),
                    1650.0,
                    new(830.0, -4.0)
                )
                {
                    Horizon = new(
                        [
                            new(Angle.FromDegrees(0.0), Angle.FromDegrees(12.0)),
                            new(Angle.FromDegrees(120.0), Angle.FromDegrees(9.0)),
                            new(Angle.FromDegrees(280.0), Angle.FromDegrees(20.0)),
                        ],
                        Angle.Zero
                    ),
                },
                Clock = SiteClock.Find("Europe/Zurich")!,
                Evening = new(2026, month, day),
                Nights = nights,
                Limits = new() { MinAltitude = Angle.FromDegrees(25.0) },
                Setup = TimeSpan.FromMinutes(60.0),
                Repoint = TimeSpan.FromMinutes(10.0),
                FocusEvery = TimeSpan.FromMinutes(60.0),
                Focus = TimeSpan.FromMinutes(3.0),
                Flats = TimeSpan.FromMinutes(15.0),
                GoalPerPanel = TimeSpan.FromHours(2.0),
                ExpectedLoss = 0.2,
                Filters =
                [
                    new(
                        "H-alpha",
                        TimeSpan.FromSeconds(180.0),
                        TimeSpan.FromSeconds(4.0),
                        3,
                        TimeSpan.FromSeconds(25.0),
                        1.0,
                        default
                    ),
                ],
                Panels =
                [
                    SkyDirection.FromDegrees(42.3, latitude < 0.0 ? -60.0 : 60.4),
                    SkyDirection.FromDegrees(35.3, latitude < 0.0 ? -62.0 : 62.0),
                ],
            }
        );
}
