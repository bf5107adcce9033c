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
    [InlineData(2, 1, "in 2 panels that share 39.6′")]
    [InlineData(1, 3, "in 3 panels that share 27′")]
    [InlineData(2, 3, "in 6 panels that share 39.6′ side by side and 27′ one above the other")]
    public void Sentence_OfSeveralFrames_SaysWhatTheyShare(int columns, int rows, string end) =>
        Assert.EndsWith(
            end + " (closed more than 999 times in 1000).",
            SummaryText.Sentence(Plans.Two with { Columns = columns, Rows = rows }),
            StringComparison.Ordinal
        );

    [Fact]
    public void Sentence_OfAMosaic_SaysHowOftenItCloses() =>
        Assert.EndsWith(
            "in 2 panels that share 39.6′ (closed 99 times in 100).",
            SummaryText.Sentence(
                Plans.Two with
                {
                    Odds = Plans.Two.Odds! with { ChanceNoGap = 0.9904 },
                }
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void Write_Odds_SayHowOftenTheWholeTargetIsHeld() =>
        Assert.Contains(
            "with the mount's errors the whole outline 87 times in 100",
            SummaryText
                .Write(
                    Plans.Two with
                    {
                        Odds = Plans.Two.Odds! with { ChanceTargetCovered = 0.871 },
                    }
                )
                .Replace("\n        ", " ", StringComparison.Ordinal),
            StringComparison.Ordinal
        );

    [Fact]
    public void Sentence_OfAWideOverlap_IsInDegrees() =>
        Assert.EndsWith(
            "in 2 panels that share 13.5° (closed more than 999 times in 1000).",
            SummaryText.Sentence(Plans.Two with { Overlap = new(0.24, 0.1) }),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(false, false, false, 1.5, "is not worth it: it would gain 9.0′ of overlap.")]
    [InlineData(
        false,
        true,
        true,
        6.0,
        "Turning it to the grid at each one, by up to 6.0°, is not worth it: panels 1 and 2 would share 39′ instead of 30′, but the mosaic closes as it is."
    )]
    [InlineData(
        false,
        true,
        false,
        6.0,
        "Turned to the grid at each one, by up to 6.0°, panels 1 and 2 would share 39′ instead of 30′ (turn_camera_at_each_panel = true)."
    )]
    [InlineData(
        true,
        true,
        false,
        6.0,
        "Turn the camera at each panel, as seen from behind it: panels 1 and 2 then share 39′ instead of 30′."
    )]
    [InlineData(
        true,
        true,
        true,
        6.0,
        "is not worth it here: panels 1 and 2 share 39′ instead of 30′, but the mosaic would close with turn_camera_at_each_panel = false as well."
    )]
    [InlineData(true, false, false, 1.5, "is not worth it here: it gains 9.0′ of overlap (")]
    [InlineData(
        false,
        false,
        false,
        0.02,
        "The camera stays as it is from panel to panel, along the grid."
    )]
    [InlineData(true, false, false, 0.02, "the grid needs no turn here.")]
    public void Write_TurningAtEachPanel_SaysHowFarAndWhetherItIsWorthIt(
        bool turned,
        bool gains,
        bool closes,
        double degrees,
        string expected
    )
    {
        var plan = Plans.Two with
        {
            Request = Plans.Two.Request with { TurnCameraAtEachPanel = turned },
            Turns = Plans.Two.Turns! with
            {
                ToGrid = [Angle.FromDegrees(degrees), Angle.FromDegrees(-degrees)],
                MostLost = new(1, 2),
                OverlapLeftAlone = Angle.FromArcminutes(30.0),
                OverlapTurned = Angle.FromArcminutes(39.0),
                GainsOverlap = gains,
                ClosesLeftAlone = closes,
            },
        };

        Assert.Contains(
            expected,
            SummaryText.Write(plan).Replace("\n", " ", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Write_PanelsThatPart_AreSaidToPart() =>
        Assert.Contains(
            "panels 1 and 2 would share 39′ instead of parting (turn_camera_at_each_panel = true).",
            SummaryText
                .Write(
                    Plans.Two with
                    {
                        Turns = Plans.Two.Turns! with
                        {
                            ToGrid = [Angle.FromDegrees(9.0), Angle.FromDegrees(-9.0)],
                            MostLost = new(1, 2),
                            OverlapLeftAlone = Angle.FromArcminutes(-3.0),
                            OverlapTurned = Angle.FromArcminutes(39.0),
                            GainsOverlap = true,
                            ClosesLeftAlone = false,
                        },
                    }
                )
                .Replace("\n", " ", StringComparison.Ordinal),
            StringComparison.Ordinal
        );

    [Fact]
    public void Write_TurningAtEachPanel_ListsTheTurnFromThePanelBefore()
    {
        var two = Plans.Two;
        var plan = two with
        {
            Request = two.Request with { TurnCameraAtEachPanel = true },
            Panels =
            [
                two.Panels[0] with
                {
                    PositionAngle = PositionAngle.FromDegrees(3.0),
                },
                two.Panels[1] with
                {
                    PositionAngle = PositionAngle.FromDegrees(358.5),
                },
            ],
        };

        var text = SummaryText.Write(plan);

        Assert.Contains(
            "Camera angle  Turn from the panel before\n",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("358.5°  4.5° clockwise\n", text, StringComparison.Ordinal);
    }

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
    public void Write_OfAnEvening_NamesItsDateEvenWhereMidnightIsTomorrow()
    {
        var text = SummaryText.Write(
            Plans.One with
            {
                Request = Plans.One.Request with { Evening = new DateOnly(2026, 12, 5) },
            }
        );
        Assert.Contains(
            "of date, for the night of 5 December 2026",
            text,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(37.0, false, "Turn    37° clockwise, seen from behind the camera, from 37°")]
    [InlineData(
        340.0,
        false,
        "Turn    20° counter-clockwise, seen from behind the camera, from 340°"
    )]
    [InlineData(340.0, true, "Turn    20° clockwise, seen from behind the camera, from 340°")]
    [InlineData(215.0, false, "Turn    35° clockwise")]
    [InlineData(180.0, false, "Turn    not needed")]
    public void Write_WithTheCameraAngleKnown_SaysHowFarToTurn(
        double now,
        bool mirrored,
        string words
    )
    {
        var request = Plans.One.Request;
        var text = SummaryText.Write(
            Plans.One with
            {
                Request = request with
                {
                    PresentCameraAngle = PositionAngle.FromDegrees(now),
                    Rig = new(250.0, new Sensor(4144, 2822, 4.63), mirrored: mirrored),
                },
            }
        );
        Assert.Contains("\n" + words, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WithTheCameraAngleNotKnown_SaysNothingOfTurning() =>
        Assert.DoesNotContain("\nTurn ", SummaryText.Write(Plans.One), StringComparison.Ordinal);

    [Theory]
    [InlineData(119.0, "119.0′ on the tight sides")]
    [InlineData(300.0, "5.0° on the tight sides")]
    public void Write_AWideMargin_IsInDegrees(double arcminutes, string words)
    {
        // Below two degrees the tangent counts as the angle: 119′ is 119.05′ as a tangent.
        var tangent =
            arcminutes < 120.0
                ? Angle.FromArcminutes(arcminutes).Radians
                : Math.Tan(Angle.FromArcminutes(arcminutes).Radians);
        Assert.Contains(
            words,
            SummaryText.Write(Plans.One with { TangentMargin = tangent }),
            StringComparison.Ordinal
        );
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
