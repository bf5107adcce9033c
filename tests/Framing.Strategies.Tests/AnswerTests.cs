using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Strategies.Tests;

public sealed class AnswerTests
{
    [Fact]
    public void Turn_AnAngle_CarriesItWithTheReason()
    {
        var answer = RotationAnswer.Turn(PositionAngle.East, "east at the top");

        Assert.Equal(PositionAngle.East, answer.Angle);
        Assert.Equal("east at the top", answer.Reason);
    }

    [Fact]
    public void Share_AnOverlap_CarriesItWithTheReason()
    {
        var answer = OverlapAnswer.Share(new PanelOverlap(0.01, 0.02), "two strips");

        Assert.Equal(new PanelOverlap(0.01, 0.02), answer.Overlap);
        Assert.Equal("two strips", answer.Reason);
    }

    [Fact]
    public void Refuse_WithAReason_CarriesNoAnswer()
    {
        Assert.Null(RotationAnswer.Refuse("no angle").Angle);
        Assert.Null(OverlapAnswer.Refuse("no overlap").Overlap);
        Assert.Equal("no angle", RotationAnswer.Refuse("no angle").Reason);
        Assert.Equal("no overlap", OverlapAnswer.Refuse("no overlap").Reason);
    }

    [Fact]
    public void Panels_OfACount_IsColumnsTimesRows() =>
        Assert.Equal(6, new PanelCount(3, 2, 0.0).Panels);
}
