namespace Framing.Mosaics.Tests;

public sealed class GridStepsTests
{
    [Fact]
    public void PanelsNeeded_CheckValues_AreMet()
    {
        var entries = CheckValues.Starting("fit-panels-");
        Assert.Equal(4, entries.Count);
        foreach (var entry in entries)
        {
            var panel = entry.Input("panel");
            entry.Meets(
                "n",
                GridSteps.PanelsNeeded(
                    entry.Input("extent"),
                    panel,
                    panel * entry.Input("overlap"),
                    entry.Input("margin")
                )
            );
        }
    }

    [Fact]
    public void PanelsNeeded_ExactFitOfAnyNumber_AddsNoPanel()
    {
        // Widths and overlaps that do not sum exactly in double precision.
        for (var n = 1; n <= 500; n++)
        {
            const double Panel = 0.0783,
                Overlap = 0.1 * Panel,
                Margin = 0.0017;
            var whole = Panel + ((n - 1) * (Panel - Overlap));

            Assert.Equal(n, GridSteps.PanelsNeeded(whole - (2.0 * Margin), Panel, Overlap, Margin));
            Assert.Equal(
                n + 1,
                GridSteps.PanelsNeeded(whole - (2.0 * Margin) + 1e-9, Panel, Overlap, Margin)
            );
        }
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.0)]
    [InlineData(double.NaN)]
    public void WholeFrame_OverlapThatIsNone_Throws(double overlap) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            GridSteps.WholeFrame(new(1.0, 1.0), new(overlap, 0.1), 2, 2)
        );

    [Fact]
    public void WholeFrame_ThreeByTwo_IsOnePanelAndTheSteps()
    {
        var whole = GridSteps.WholeFrame(new(4.5, 3.0), new(0.5, 0.25), 3, 2);

        Assert.Equal(4.5 + (2 * 4.0), whole.TangentWidth);
        Assert.Equal(3.0 + 2.75, whole.TangentHeight);
    }
}
