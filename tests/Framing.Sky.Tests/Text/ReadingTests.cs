namespace Framing.Sky.Tests;

public sealed class ReadingTests
{
    [Fact]
    public void Value_OfARefusal_ThrowsItsLine()
    {
        var reading = CoordinateReader.ReadDeclination("91");
        Assert.False(reading.Succeeded);
        Assert.False(reading.TryGet(out _, out var error));
        Assert.Equal(error, Assert.Throws<InvalidOperationException>(() => reading.Value).Message);
    }

    [Fact]
    public void Error_OfAValue_IsNull()
    {
        var reading = CoordinateReader.ReadDeclination("45");
        Assert.True(reading.TryGet(out var value, out var error));
        Assert.Null(error);
        Assert.Equal(reading.Value, value);
    }

    [Fact]
    public void Default_IsARefusal() =>
        Assert.False(string.IsNullOrEmpty(default(Reading<Angle>).Error));
}
