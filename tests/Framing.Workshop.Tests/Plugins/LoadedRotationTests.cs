using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class LoadedRotationTests
{
    [Theory]
    [InlineData("throws-when-asked", "threw RingStuckException: the ring is stuck")]
    [InlineData("answers-null", "gave no answer")]
    [InlineData("needs-it-when-asked", "needs LostLibrary 0.1.0.0, which is not beside it")]
    [InlineData(
        "asks-for-another-setting",
        "threw KeyNotFoundException: No setting \"angle_deg\" of this kind is declared by the strategy."
    )]
    public void Choose_PluginAtFault_RefusesInOneLineThatNamesIt(string name, string problem)
    {
        var found = Shelves.Find(StrategyKind.Rotation, name);
        using var strategy = PluginShelf.LoadRotation(found, out _);

        var answer = strategy!.Choose(Questions.Rotation());

        Assert.Null(answer.Angle);
        Assert.Equal($"plugin {found.File}, strategy \"{name}\": {problem}", answer.Reason);
        Assert.Equal(answer.Reason, strategy.Fault?.Line);
    }

    [Fact]
    public void Choose_BesideBrokenClassesOfTheSamePlugin_Answers()
    {
        using var strategy = PluginShelf.LoadRotation(
            Shelves.Find(StrategyKind.Rotation, "needs-nothing"),
            out _
        );

        var answer = strategy!.Choose(Questions.Rotation());

        Assert.Equal(33.0, answer.Angle!.Value.Degrees, 12);
        Assert.Equal("33 degrees", answer.Reason);
        Assert.Null(strategy.Fault);
    }

    [Fact]
    public void Choose_WithoutAReason_TakesTheSummary()
    {
        using var strategy = PluginShelf.LoadRotation(
            Shelves.Find(StrategyKind.Rotation, "without-reason"),
            out _
        );

        var turned = strategy!.Choose(
            Questions.Rotation(settings: Questions.Settings(("refuse", false)))
        );
        var refused = strategy.Choose(
            Questions.Rotation(settings: Questions.Settings(("refuse", true)))
        );

        Assert.Equal(PositionAngle.East, turned.Angle);
        Assert.Equal("Turns without a word, refuses without a word", turned.Reason);
        Assert.Equal("refused without a reason", refused.Reason);
        Assert.Null(strategy.Fault);
    }
}
