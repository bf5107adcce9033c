namespace Framing.Drawing.Tests;

public sealed class LabelPlacerTests
{
    private static readonly Box Room = new(0.0, 0.0, 400.0, 300.0);

    [Fact]
    public void Take_TwoOnTheSamePlace_SecondIsLeftOut()
    {
        var placer = new LabelPlacer(Room, 2.0);
        var place = new Box(10.0, 10.0, 60.0, 20.0);
        placer.Begin();
        placer.Offer(place, 0.0);
        Assert.Equal(place, placer.Take());
        placer.Begin();
        placer.Offer(place, 0.0);
        Assert.Null(placer.Take());
    }

    [Fact]
    public void Offer_BeyondTheRoom_IsNotTaken()
    {
        var placer = new LabelPlacer(Room, 2.0);
        placer.Begin();
        placer.Offer(new(380.0, 10.0, 420.0, 20.0), 0.0);
        Assert.Null(placer.Take());
    }

    [Fact]
    public void Offer_OverALineOrAStar_TheClearPlaceWins()
    {
        var placer = new LabelPlacer(Room, 2.0);
        placer.Avoid(Lines.Open(new(0.0, 15.0), new(400.0, 15.0)));
        placer.Avoid(new Dot(new(100.0, 115.0), 5.0));
        var clear = new Box(80.0, 200.0, 130.0, 210.0);
        placer.Begin();
        placer.Offer(new(80.0, 10.0, 130.0, 20.0), 0.0);
        placer.Offer(new(80.0, 110.0, 130.0, 120.0), 0.1);
        placer.Offer(clear, 0.2);
        Assert.Equal(clear, placer.Take());
    }

    [Fact]
    public void Begin_WithALimit_CostlyPlacesAreLeftOut()
    {
        var placer = new LabelPlacer(Room, 2.0);
        placer.Avoid(Lines.Open(new(0.0, 15.0), new(400.0, 15.0)));
        placer.Begin(most: 0.9);
        placer.Offer(new(80.0, 10.0, 130.0, 20.0), 0.0);
        Assert.Null(placer.Take());
    }
}
