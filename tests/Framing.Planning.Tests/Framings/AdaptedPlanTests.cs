using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class AdaptedPlanTests
{
    private static readonly PanelErrors Errors = new(
        Angle.FromArcminutes(6.0),
        Angle.FromDegrees(1.0),
        Angle.FromArcseconds(20.0),
        Angle.FromArcminutes(3.0)
    );

    [Theory]
    [InlineData(false, 16)]
    [InlineData(true, 10)]
    public void Frame_OfBentOutlines_TakesFewerPanelsThatCloseAndCoverAsWell(bool turned, int shown)
    {
        // 200 of them, with the camera turned at each panel, are measured by AdaptedGridTests of the mosaics in every run.
        var outlines = LongRun.Wanted ? 200 : shown;
        var random = new Random(4);
        List<double> savings = [];
        List<string> off = [];
        for (var i = 0; i < outlines; i++)
        {
            var request = Requests.Of(Bent(random), new Requests.Best()) with
            {
                Errors = Errors,
                Margin = Angle.FromArcminutes(8.0),
                MostPanels = 400,
                TurnCameraAtEachPanel = turned,
            };
            var full = Requests.Framed(request);
            var adapted = Requests.Framed(request with { Grid = GridWish.Adapted });
            savings.Add(1.0 - ((double)adapted.PanelCount / full.PanelCount));

            var (one, other) = (full.Odds!.ChanceNoGap, adapted.Odds!.ChanceNoGap);
            var room =
                5.0
                * Math.Sqrt(
                    (one * (1.0 - one) / full.Odds.Trials)
                        + (other * (1.0 - other) / adapted.Odds.Trials)
                );
            if (
                adapted.PanelCount > full.PanelCount
                || other < one - room
                || adapted.Coverage!.TargetCoveredFraction
                    < full.Coverage!.TargetCoveredFraction - 1e-6
                || adapted.Coverage.GapArea.SquareArcminutes
                    > full.Coverage.GapArea.SquareArcminutes + 0.01
            )
            {
                off.Add(
                    FormattableString.Invariant(
                        $"{i} at {full.Pose.Centre}: {full.PanelCount} {adapted.PanelCount}, closes {one} {other}, covers {full.Coverage!.TargetCoveredFraction} {adapted.Coverage!.TargetCoveredFraction}"
                    )
                );
            }
        }

        Assert.True(off.Count == 0, string.Join("\n", off));
        savings.Sort();
        Assert.True(
            savings[outlines / 2] >= 0.15,
            FormattableString.Invariant($"median {savings[outlines / 2]}")
        );
    }

    [Fact]
    public void Frame_OfBandsThatCloseLessOftenLeftAlone_TakesTheRectangleAndSaysSo()
    {
        // The 17th of those outlines stands at declination -71: 16 panels in a rectangle, 8 in bands.
        var random = new Random(4);
        var outline = Bent(random);
        for (var i = 0; i < 16; i++)
        {
            outline = Bent(random);
        }

        var request = Requests.Of(outline, new Requests.Best(), grid: GridWish.Adapted) with
        {
            Errors = Errors,
            Margin = Angle.FromArcminutes(8.0),
        };

        var alone = Requests.Framed(request);
        var turned = Requests.Framed(request with { TurnCameraAtEachPanel = true });

        Assert.Equal((true, 16L), (alone.IsRectangle, alone.PanelCount));
        Assert.Equal((false, 8L), (turned.IsRectangle, turned.PanelCount));
        Assert.Contains(
            "8 panels in bands would follow the outline, but with the camera left alone they close or cover it less surely. Set turn_camera_at_each_panel = true to save 8 panels.",
            alone.Warnings
        );
    }

    /// <summary>A stretch of a ring, 8 to 30 degrees long, bent by 60 to 240 degrees, thinner towards its ends.</summary>
    private static SkyOutline Bent(Random random)
    {
        var dec = Math.Asin((2.0 * random.NextDouble()) - 1.0) * 180.0 / Math.PI;
        var plane = new TangentPlane(
            SkyDirection.FromDegrees(360.0 * random.NextDouble(), Math.Clamp(dec, -89.9, 89.9))
        );
        var length = (8.0 + (22.0 * random.NextDouble())) * Math.PI / 180.0;
        var bend = (60.0 + (180.0 * random.NextDouble())) * Math.PI / 180.0;
        var breadth = (0.5 + (2.0 * random.NextDouble())) * Math.PI / 180.0;
        var (sin, cos) = Math.SinCos(Math.PI * random.NextDouble());
        const int Steps = 24;
        SkyDirection[] corners =
        [
            .. Enumerable.Range(0, Steps + 1).Select(i => Place((double)i / Steps, breadth / 2.0)),
            .. Enumerable
                .Range(0, Steps + 1)
                .Select(i => Place(1.0 - ((double)i / Steps), -breadth / 2.0)),
        ];
        return new([new SkyPolygon(corners)]);

        SkyDirection Place(double along, double outward)
        {
            var (s, c) = Math.SinCos((along - 0.5) * bend);
            var radius = (length / bend) + (outward * Math.Sin(Math.PI * (0.15 + (0.7 * along))));
            var (x, y) = (radius * s, (radius * c) - (length / bend));
            return plane.Unproject(new((x * cos) - (y * sin), (x * sin) + (y * cos)));
        }
    }
}
