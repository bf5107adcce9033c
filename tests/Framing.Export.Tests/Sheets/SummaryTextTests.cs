using Framing.Planning;
using Framing.Sky;

namespace Framing.Export.Tests;

public sealed class SummaryTextTests
{
    [Fact]
    public void Sentence_OfOneFrame_SharesNothing() =>
        Assert.Equal(
            "Frame the cloud at 250 mm, the camera turned to 0°, in 1 panel.",
            SummaryText.Sentence(Plans.One)
        );

    [Theory]
    [InlineData(2, 1, "in 2 panels that share 39.6′.")]
    [InlineData(1, 3, "in 3 panels that share 27′.")]
    [InlineData(2, 3, "in 6 panels that share 39.6′ side by side and 27′ one above the other.")]
    public void Sentence_OfSeveralFrames_SaysWhatTheyShare(int columns, int rows, string end) =>
        Assert.EndsWith(
            end,
            SummaryText.Sentence(Plans.Two with { Columns = columns, Rows = rows }),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(359.96, "turned to 0°")]
    [InlineData(359.94, "turned to 359.9°")]
    [InlineData(21.25001, "turned to 21.3°")]
    public void Sentence_OfAnAngle_NeverSays360(double angle, string words) =>
        Assert.Contains(
            words,
            SummaryText.Sentence(
                Plans.One with
                {
                    Pose = new CameraPose(Plans.One.Pose.Centre, PositionAngle.FromDegrees(angle)),
                }
            ),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(1.0, "100 % of the outline")]
    [InlineData(0.99999, "99.9 % of the outline")]
    [InlineData(0.5, "50.0 % of the outline")]
    [InlineData(0.0, "0.0 % of the outline")]
    public void Write_WhatIsCovered_IsNeverRoundedUpToAll(double fraction, string words) =>
        Assert.Contains(
            words,
            SummaryText.Write(
                Plans.One with
                {
                    Coverage = Plans.One.Coverage! with { TargetCoveredFraction = fraction },
                }
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void Write_AnOutlineThatStandsOut_SaysByHowMuch()
    {
        var text = SummaryText.Write(
            Plans.One with
            {
                TangentMargin = -Angle.FromArcminutes(12.34).Radians,
            }
        );
        Assert.Contains("none: the outline stands out by 12.3′", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(GotoFrame.OfDate, "they are of date, 6 December 2026")]
    [InlineData(GotoFrame.J2000, "they are J2000")]
    public void Write_WhatToType_SaysInWhichFrame(GotoFrame frame, string words)
    {
        var text = SummaryText.Write(
            Plans.One with
            {
                Request = Plans.One.Request with { GotoFrame = frame },
            }
        );
        Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_LongWarnings_StayWithinTheScreen()
    {
        var text = SummaryText.Write(
            Plans.Two with
            {
                Warnings = [string.Join(' ', Enumerable.Repeat("nebulosity", 60))],
            }
        );

        Assert.EndsWith("\n", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 100, line));
        Assert.Contains("\n! nebulosity", text, StringComparison.Ordinal);
        Assert.Contains("\n  nebulosity", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_APlanThatCannotBe_SaysWhy()
    {
        var text = SummaryText.Write(
            Plans.One with
            {
                Columns = 70_000,
                Rows = 50_000,
                Panels = [],
                Coverage = null,
                Impossible = "It needs too many panels.",
            }
        );

        Assert.Contains(
            "in 3500000000 panels",
            text.ReplaceLineEndings(" "),
            StringComparison.Ordinal
        );
        Assert.Contains("\n! It needs too many panels.\n", text, StringComparison.Ordinal);
    }
}
