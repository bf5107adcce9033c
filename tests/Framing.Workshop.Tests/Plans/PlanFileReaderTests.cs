using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class PlanFileReaderTests
{
    [Fact]
    public void ReadBuiltIn_IsTheTwoPanelSample()
    {
        var plan = PlanFileReader.ReadBuiltIn();
        Assert.True(plan.IsBuiltIn);
        Assert.Equal("Two panels across the hearth", plan.Title);
        Assert.Equal(250.0, plan.Rig.FocalLengthMillimetres);
        Assert.Equal(["IC 1805", "IC 1848", "HB 3"], plan.Target.Names);
        Assert.Equal(36, plan.Site!.Horizon.Count);
        Assert.Equal("►", plan.Mount.Keys.East);
        Assert.Equal(new DateOnly(2026, 12, 5), plan.Night.Date);
        Assert.Equal(0.15, plan.Mosaic.Overlap.Settings["overlap_fraction"]);
        Assert.Equal(GridWish.Fewest, plan.Mosaic.Grid);
    }
}
