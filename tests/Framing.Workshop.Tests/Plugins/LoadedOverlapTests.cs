namespace Framing.Workshop.Tests;

public sealed class LoadedOverlapTests
{
    // The panel: 4144 and 2822 px of 4.63 um at 250 mm are tangents of 0.07674688 and 0.05226344: 263.836 and 179.668 arcmin.
    [Theory]
    [InlineData(
        1.0,
        0.1,
        "answered an overlap of 263.84 arcmin along the width; it is 0 or more and less than the panel's 263.84"
    )]
    [InlineData(
        0.1,
        1.5,
        "answered an overlap of 269.5 arcmin along the height; it is 0 or more and less than the panel's 179.67"
    )]
    [InlineData(
        -0.01,
        0.1,
        "answered an overlap of -2.64 arcmin along the width; it is 0 or more and less than the panel's 263.84"
    )]
    [InlineData(
        0.1,
        -4.0,
        "answered an overlap of NaN arcmin along the height; it is 0 or more and less than the panel's 179.67"
    )]
    public void Choose_OutOfRange_IsRefusedInOneLine(double wide, double high, string problem)
    {
        var found = Shelves.Find(StrategyKind.Overlap, "overlap-of-panels");
        using var strategy = PluginShelf.LoadOverlap(found, out _);

        var answer = strategy!.Choose(
            Questions.Overlap(Questions.Settings(("wide_panels", wide), ("high_panels", high)))
        );

        Assert.Null(answer.Overlap);
        Assert.Equal(
            $"plugin {found.File}, strategy \"overlap-of-panels\": {problem}",
            answer.Reason
        );
        Assert.Equal(answer.Reason, strategy.Fault?.Line);
    }

    [Fact]
    public void Choose_InRangeAfterAFault_AnswersAndForgetsTheFault()
    {
        using var strategy = PluginShelf.LoadOverlap(
            Shelves.Find(StrategyKind.Overlap, "overlap-of-panels"),
            out _
        );

        strategy!.Choose(
            Questions.Overlap(Questions.Settings(("wide_panels", 2.0), ("high_panels", 0.0)))
        );
        Assert.NotNull(strategy.Fault);
        var answer = strategy.Choose(
            Questions.Overlap(Questions.Settings(("wide_panels", 0.0), ("high_panels", 0.999)))
        );

        Assert.Null(strategy.Fault);
        Assert.Equal(0.0, answer.Overlap!.Value.AlongWidth);
        Assert.Equal(0.999 * 0.05226344, answer.Overlap.Value.AlongHeight, 12);
    }

    [Theory]
    [InlineData("overlap-throws", "threw DivideByZeroException: divided by nothing")]
    [InlineData("answers-null", "gave no answer")]
    public void Choose_PluginAtFault_RefusesInOneLineThatNamesIt(string name, string problem)
    {
        var found = Shelves.Find(StrategyKind.Overlap, name);
        using var strategy = PluginShelf.LoadOverlap(found, out _);

        var answer = strategy!.Choose(Questions.Overlap());

        Assert.Null(answer.Overlap);
        Assert.Equal($"plugin {found.File}, strategy \"{name}\": {problem}", answer.Reason);
    }

    [Fact]
    public void Choose_ReasonOfSeveralLines_BecomesOne()
    {
        using var strategy = PluginShelf.LoadOverlap(
            Shelves.Find(StrategyKind.Overlap, "without-reason"),
            out _
        );

        var refused = strategy!.Choose(Questions.Overlap(Questions.Settings(("refuse", true))));
        var shared = strategy.Choose(Questions.Overlap(Questions.Settings(("refuse", false))));

        Assert.Equal("first second", refused.Reason);
        Assert.Equal("Turns without a word, refuses without a word", shared.Reason);
    }
}
