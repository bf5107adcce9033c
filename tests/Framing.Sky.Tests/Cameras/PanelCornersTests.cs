using System.Text.Json;

namespace Framing.Sky.Tests;

/// <summary>The corners of random frames, answered by wcslib (tests/reference/wcs/make_answers.py).</summary>
public sealed class PanelCornersTests
{
    private static readonly List<JsonElement> Answers =
    [
        .. TestData.Json("panel-corners.json").GetProperty("answers").EnumerateArray(),
    ];

    [Fact]
    public void Corners_EveryAnswer_AreWithinAMillionthOfAnArcsecond()
    {
        Assert.Equal(200, Answers.Count);
        Assert.Equal(100, Answers.Count(answer => answer.GetProperty("mirrored").GetBoolean()));
        Assert.InRange(Answers.Count(answer => Math.Abs(Number(answer, "dec")) > 87.9), 20, 40);
        foreach (var answer in Answers)
        {
            var rig = new Rig(
                Number(answer, "focalLengthMillimetres"),
                new Sensor(
                    (int)Number(answer, "widthPx"),
                    (int)Number(answer, "heightPx"),
                    Number(answer, "pixelMicrometres")
                ),
                (int)Number(answer, "binning"),
                answer.GetProperty("mirrored").GetBoolean()
            );
            var pose = new CameraPose(
                SkyDirection.FromDegrees(Number(answer, "ra"), Number(answer, "dec")),
                PositionAngle.FromDegrees(Number(answer, "positionAngle"))
            );
            var fromField = rig.Field.Corners(pose, rig.Mirrored);
            var fromPixels = CornersOf(rig, pose);
            var expected = answer.GetProperty("corners");
            Assert.Equal(4, expected.GetArrayLength());
            for (var i = 0; i < 4; i++)
            {
                var corner = SkyDirection.FromDegrees(
                    expected[i][0].GetDouble(),
                    expected[i][1].GetDouble()
                );
                Assert.Equal(0.0, fromField[i].SeparationTo(corner).Arcseconds, 1e-6);
                Assert.Equal(0.0, fromPixels[i].SeparationTo(corner).Arcseconds, 1e-6);
            }
        }
    }

    /// <summary>The outer corners by pixel: top-left, top-right, bottom-right, bottom-left, rows running upwards.</summary>
    internal static SkyDirection[] CornersOf(Rig rig, CameraPose pose)
    {
        var world = rig.WorldCoordinates(pose);
        var right = rig.FrameWidthPx + 0.5;
        var top = rig.FrameHeightPx + 0.5;
        return
        [
            world.PixelToSky(new(0.5, top)),
            world.PixelToSky(new(right, top)),
            world.PixelToSky(new(right, 0.5)),
            world.PixelToSky(new(0.5, 0.5)),
        ];
    }

    private static double Number(JsonElement answer, string name) =>
        answer.GetProperty(name).GetDouble();
}
