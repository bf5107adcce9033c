using Framing.Sky;

namespace Framing.Cli.Tests;

public sealed class KeysCommandTests
{
    private static readonly SkyDirection Start = SkyDirection.FromDegrees(100.0, 40.0);

    [Fact]
    public void Keys_TowardsTheFinishSide_LearnTheRate()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Start, 0.0));

        // 20 times the sky's motion for 10 s are 50.1'; it went 45.
        var outcome = Press(session, plan, 0.0, 45.0, "north", "10");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("moved the telescope north", outcome.Words, StringComparison.Ordinal);
        Assert.Contains("it runs at 90 % of that", outcome.Words, StringComparison.Ordinal);
        Assert.Contains(
            "rate_factor = [1.0, 0.898]",
            File.ReadAllText(plan),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Keys_AwayFromTheFinishSide_LearnThePlay()
    {
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(Start, 0.0, "[mount]\nrate_factor = [1.0, 0.9]\n")
        );

        // 0.9 times 50.14' are 45.12'; it went 40.12: 5' of play.
        var outcome = Press(session, plan, 0.0, -40.12, "south", "10");
        Assert.Contains("5.0′ of play", outcome.Words, StringComparison.Ordinal);
        Assert.Contains(
            "backlash_arcmin = [3.0, 5.0]",
            File.ReadAllText(plan),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Keys_ThatStandCrosswise_AreSetRight()
    {
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(
                Start,
                0.0,
                "[mount]\nkeys = { east = \"A\", west = \"B\", north = \"C\", south = \"D\" }\n"
            )
        );
        var outcome = Press(session, plan, -50.0, 0.0, "A", "10");
        Assert.Contains("moved the telescope west", outcome.Words, StringComparison.Ordinal);
        Assert.Contains("crossed", outcome.Words, StringComparison.Ordinal);
        Assert.Contains(
            "keys = { east = \"B\", west = \"A\", north = \"C\", south = \"D\" }",
            File.ReadAllText(plan),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(0.5, 0.0, "east", "moved by only")]
    [InlineData(30.0, 30.0, "east", "aside as well")]
    [InlineData(0.0, 30.0, "east", "not along the axis of east")]
    [InlineData(100.0, 0.0, "east", "no rate of speed")]
    public void Keys_ThatCannotBeJudged_SayWhyAndEndInThree(
        double east,
        double north,
        string pressed,
        string why
    )
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Start, 0.0));
        var before = File.ReadAllText(plan);
        var outcome = Press(session, plan, east, north, pressed, "10", "--speed", "2");
        Assert.Equal(3, outcome.Code);
        Assert.Contains(why, outcome.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(plan));
    }

    [Fact]
    public void Keys_OfAMisspeltName_SuggestTheNearest()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Start, 0.0));
        var outcome = Press(session, plan, 50.0, 0.0, "eats", "10");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("did you mean east?", outcome.Error, StringComparison.Ordinal);
    }

    private static Session.Outcome Press(
        Session session,
        string plan,
        double axisEastArcmin,
        double northArcmin,
        string pressed,
        string seconds,
        params string[] more
    )
    {
        var from = MadeFrames.Time.ToOfDate(Start);
        var to = SkyDirection.FromRaDec(
            from.RightAscension + Angle.FromArcminutes(axisEastArcmin),
            from.Declination + Angle.FromArcminutes(northArcmin)
        );
        return session.Run([
            "keys",
            plan,
            MadeFrames.Frame(session, "a.fits", Start, 0.0),
            MadeFrames.Frame(
                session,
                "b.fits",
                MadeFrames.Time.ToIcrs(to),
                0.0,
                MadeFrames.Evening.AddMinutes(1.0)
            ),
            "--pressed",
            pressed,
            "--seconds",
            seconds,
            .. more,
        ]);
    }
}
