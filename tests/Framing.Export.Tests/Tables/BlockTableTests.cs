using System.Text;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Export.Tests;

public sealed class BlockTableTests
{
    [Fact]
    public void Write_ANight_OneRowABlockInShootingOrder()
    {
        var plan = Nights();
        var text = Encoding.UTF8.GetString(BlockTable.Write(plan));
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        var lines = text.Split("\r\n")[..^1];
        Assert.Equal(
            "night,panel,filter,from_utc,to_utc,from_local,to_local,subs_to_shoot,subs_expected_good,lowest_altitude_deg,highest_altitude_deg,airmass",
            lines[0]
        );
        Assert.Equal(plan.Blocks.Count(), lines.Length - 1);
        var first = plan.Blocks.First();
        Assert.StartsWith(
            FormattableString.Invariant(
                $"2026-12-05,{first.Panel},\"O III, narrow\",{first.From:yyyy-MM-dd'T'HH:mm:ss}Z,{first.To:yyyy-MM-dd'T'HH:mm:ss}Z,{first.From.AddHours(1.0):yyyy-MM-dd'T'HH:mm:ss}+01:00,"
            ),
            lines[1],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Sentence_WithNights_TellsWhenAndHowMuchEachPanelGets()
    {
        var plan = Nights();
        var sentence = SummaryText.Sentence(Plans.Two, plan);
        Assert.Contains(" mm on Sat 5 Dec 2026, the camera", sentence, StringComparison.Ordinal);
        Assert.EndsWith(", 1 h of good subs each.", sentence, StringComparison.Ordinal);
        Assert.Equal(TimeSpan.FromHours(1.0), plan.GoodExposure(1));
    }

    [Fact]
    public void Write_PanelsWithNights_FirstLastAndSubs()
    {
        var plan = Nights();
        var rows = Encoding.UTF8.GetString(PanelTable.Write(Plans.Two, plan)).Split("\r\n")[1..^1];
        Assert.Equal(2, rows.Length);
        for (var i = 0; i < rows.Length; i++)
        {
            var own = plan.Blocks.Where(block => block.Panel == i + 1).ToList();
            Assert.EndsWith(
                FormattableString.Invariant(
                    $",{own[0].From:yyyy-MM-dd'T'HH:mm:ss}Z,{own[^1].To:yyyy-MM-dd'T'HH:mm:ss}Z,{own.Sum(block => block.SubsToShoot)}"
                ),
                rows[i],
                StringComparison.Ordinal
            );
        }
    }

    private static PlannedNights Nights() =>
        NightsStep.Plan(
            new()
            {
                Site = new(
                    Angle.FromDegrees(46.2),
                    Angle.FromDegrees(8.1),
                    1650.0,
                    new(830.0, -4.0)
                ),
                Clock = SiteClock.Find("Europe/Zurich")!,
                Evening = new(2026, 12, 5),
                Limits = new() { MinAltitude = Angle.FromDegrees(25.0) },
                Repoint = TimeSpan.FromMinutes(10.0),
                GoalPerPanel = TimeSpan.FromHours(1.0),
                Filters =
                [
                    new(
                        "O III, narrow",
                        TimeSpan.FromSeconds(300.0),
                        TimeSpan.FromSeconds(4.0),
                        3,
                        TimeSpan.FromSeconds(25.0),
                        1.0,
                        default
                    ),
                ],
                Panels = [.. Plans.Two.Panels.Select(panel => panel.Centre)],
            }
        );
}
