using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class KeepCameraAngleTests
{
    [Fact]
    public void Choose_PresentAngleKnown_KeepsItToTheLastBit()
    {
        var present = PositionAngle.FromDegrees(217.3);

        Assert.Equal(
            present,
            Ask.Rotation("keep-camera-angle", Questions.Rotation(present: present)).Angle
        );
    }

    [Fact]
    public void Choose_PresentAngleUnknown_SaysWhatIsMissing()
    {
        var answer = Ask.Rotation("keep-camera-angle", Questions.Rotation());

        Assert.Null(answer.Angle);
        Assert.Equal(
            "give camera_angle_deg in [rotation]: the position angle of the picture's up direction, from a solved frame",
            answer.Reason
        );
    }
}
