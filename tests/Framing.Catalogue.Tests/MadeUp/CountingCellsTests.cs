using Framing.Catalogue.Tests.Stars;
using Framing.Sky;

namespace Framing.Catalogue.Tests.MadeUp;

public sealed class CountingCellsTests
{
    /// <summary>The catalogue's rule (tests/reference/catalogue/README.md), worked out again from every star of it.</summary>
    [Fact]
    public void LimitOf_EveryCell_IsWhereTheCatalogueWasCut()
    {
        Assert.Equal(12738, CountingCells.Count);
        var cells = new List<double>[CountingCells.Count];
        foreach (var star in StarScan.Stars)
        {
            (cells[CountingCells.Holding(star.Direction)] ??= []).Add(star.V);
        }

        int complete = 0,
            capped = 0;
        for (var number = 0; number < cells.Length; number++)
        {
            // Everything below V 10; else the brightest, until there are 15 for a square degree.
            cells[number].Sort();
            var kept = (int)Math.Ceiling(15.0 * CountingCells.Cell(number).SquareDegrees);
            var last = cells[number][Math.Min(kept, cells[number].Count) - 1];
            Assert.Equal(Math.Clamp(last, 10.0, 12.0), CountingCells.LimitOf(number), 1e-9);
            complete += last <= 10.0 ? 1 : 0;
            capped += last > 12.0 ? 1 : 0;
        }

        Assert.InRange(complete, 1000, 2000);
        Assert.Equal(124, capped);
    }

    [Fact]
    public void Cells_AllTogether_CoverTheSkyOnce()
    {
        var area = 0.0;
        for (var number = 0; number < CountingCells.Count; number++)
        {
            var cell = CountingCells.Cell(number);
            area += cell.SquareDegrees;
            Assert.Equal(number, CountingCells.Holding(cell.Middle));
            Assert.Equal(number, CountingCells.Holding(cell.At(0.001, 0.001)));
            Assert.Equal(number, CountingCells.Holding(cell.At(0.999, 0.999)));
        }

        Assert.Equal(4.0 * Math.PI * Math.Pow(180.0 / Math.PI, 2.0), area, 1e-6);
    }

    [Theory]
    [InlineData(0.0, 0.0, 0.01)]
    [InlineData(359.9, 45.0, 3.0)]
    [InlineData(12.0, 89.5, 1.0)]
    [InlineData(77.0, -88.0, 4.0)]
    [InlineData(200.0, -30.0, 60.0)]
    [InlineData(200.0, -30.0, 180.0)]
    public void Touching_ACone_HasEveryCellWithAPlaceInside(double ra, double dec, double radius)
    {
        var middle = SkyDirection.FromDegrees(ra, dec);
        var touching = CountingCells.Touching(middle, Angle.FromDegrees(radius));

        Assert.Equal(touching.Order().Distinct(), touching);
        for (var number = 0; number < CountingCells.Count; number++)
        {
            var cell = CountingCells.Cell(number);
            var inside = false;
            for (var i = 0; i < 25; i++)
            {
                inside |= cell.At(i % 5 / 4.0, i / 5 / 4.0).SeparationTo(middle).Degrees <= radius;
            }

            Assert.True(!inside || touching.BinarySearch(number) >= 0);
        }
    }
}
