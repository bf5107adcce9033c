using System.Text.Json;
using Framing.Sky;

namespace Framing.Cli.Tests;

public sealed class CheckCommandTests
{
    private static readonly SkyDirection Panel = SkyDirection.FromDegrees(40.0, 61.0);

    [Fact]
    public void Check_FrameOnThePanel_SaysStart()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        var outcome = session.Run("check", plan, MadeFrames.Frame(session, "a.fits", Panel, 20.0));
        Assert.Equal(0, outcome.Code);
        Assert.Contains("Good: start.", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(string.Empty, outcome.Error);
    }

    [Theory]
    [InlineData(false, false, 14.0, 6.0)]
    [InlineData(false, true, 14.0, 6.0)]
    [InlineData(true, false, 14.0, -6.0)]
    [InlineData(true, true, 14.0, -6.0)]
    public void Check_CameraTurned_SaysTurnAsDisplayed(
        bool mirrored,
        bool topDown,
        double angle,
        double turn
    )
    {
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(
                Panel,
                20.0,
                rig: MadeFrames.Rig + (mirrored ? "\nmirrored = true" : string.Empty)
            )
        );
        var frame = MadeFrames.Frame(
            session,
            "a.fits",
            Panel,
            angle,
            mirrored: mirrored,
            topDown: topDown
        );
        var found = session.Run("check", plan, frame, "--json").Json().GetProperty("frames")[0];
        Assert.Equal(turn, found.GetProperty("turnCameraDeg").GetDouble(), 1e-4);
        Assert.Equal(angle, found.GetProperty("positionAngleDeg").GetDouble(), 1e-6);
        Assert.Equal(mirrored, found.GetProperty("displayedMirrored").GetBoolean());
        Assert.Equal("turn", found.GetProperty("steps")[0].GetString());
        var cautions = string.Concat(
            found.GetProperty("cautions").EnumerateArray().Select(text => text.GetString())
        );
        Assert.Equal(topDown, cautions.Contains("top-down", StringComparison.Ordinal));
    }

    [Fact]
    public void Check_LargeError_OffersWhatToTypeAndCarriesTheOffsetToTheNextPanel()
    {
        // A mount that always points 50' east (on its axis) and 40' south of what is typed.
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames
                .Plan(Panel, 20.0)
                .Replace("[60, 40]", "[420, 40]", StringComparison.Ordinal)
                .Replace("grid = [1, 1]", "grid = [2, 1]", StringComparison.Ordinal)
                .Replace("camera_angle_deg = 20", "camera_angle_deg = 0", StringComparison.Ordinal)
                .Replace("size_arcmin", "angle_deg = 90\nsize_arcmin", StringComparison.Ordinal)
        );
        var panels = session
            .Run("plan", plan, "--out", Path.Combine(session.Folder, "out"), "--json")
            .Json()
            .GetProperty("panels");
        SkyDirection Pointed(string ra, string dec)
        {
            Assert.True(
                CoordinateReader.ReadDirection($"{ra}, {dec}").TryGet(out var typed, out _)
            );
            return MadeFrames.Time.ToIcrs(
                SkyDirection.FromRaDec(
                    typed.RightAscension + Angle.FromArcminutes(50.0),
                    typed.Declination - Angle.FromArcminutes(40.0)
                )
            );
        }

        JsonElement Check(string name, SkyDirection at, int minute, int panel) =>
            session
                .Run(
                    "check",
                    plan,
                    MadeFrames.Frame(session, name, at, 0.0, MadeFrames.Evening.AddMinutes(minute)),
                    "--panel",
                    panel.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    "--json"
                )
                .Json()
                .GetProperty("frames")[0];

        var entry = panels[0].GetProperty("entry");
        var first = Check(
            "1.fits",
            Pointed(entry.GetProperty("ra").GetString()!, entry.GetProperty("dec").GetString()!),
            0,
            1
        );
        Assert.Equal("retype", first.GetProperty("steps")[0].GetString());
        var offset = first.GetProperty("learnedOffset");
        Assert.Equal(50.0, offset.GetProperty("raArcmin").GetDouble(), 0.3);
        Assert.Equal(-40.0, offset.GetProperty("decArcmin").GetDouble(), 0.1);

        // Typed as told, the mount is there.
        var retype = first.GetProperty("retype");
        var second = Check(
            "2.fits",
            Pointed(retype.GetProperty("ra").GetString()!, retype.GetProperty("dec").GetString()!),
            5,
            1
        );
        Assert.InRange(
            second.GetProperty("moveNeeded").GetProperty("totalArcmin").GetDouble(),
            0.0,
            0.3
        );

        // The next panel, typed with the same correction: the check offers the same offset again, not none and not twice.
        var other = panels[1].GetProperty("centre");
        var wanted = MadeFrames.Time.ToOfDate(
            SkyDirection.FromDegrees(
                other.GetProperty("raDeg").GetDouble(),
                other.GetProperty("decDeg").GetDouble()
            )
        );
        var third = Check("3.fits", MadeFrames.Time.ToIcrs(wanted), 10, 2);
        Assert.Equal("within", third.GetProperty("verdict").GetString());
        Assert.Equal(
            50.0,
            third.GetProperty("learnedOffset").GetProperty("raArcmin").GetDouble(),
            0.3
        );

        // Looking at an old frame again changes nothing.
        var again = Check(
            "1.fits",
            Pointed(entry.GetProperty("ra").GetString()!, entry.GetProperty("dec").GetString()!),
            0,
            1
        );
        Assert.Equal(first.ToString(), again.ToString());
    }

    [Fact]
    public void Check_TypedElsewhere_ReckonsWithIt()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        var typed = MadeFrames.Time.ToOfDate(Panel);
        var frame = MadeFrames.Frame(
            session,
            "a.fits",
            MadeFrames.Time.ToIcrs(
                SkyDirection.FromRaDec(
                    typed.RightAscension,
                    typed.Declination + Angle.FromArcminutes(45.0)
                )
            ),
            20.0
        );
        var offset = session
            .Run(
                "check",
                plan,
                frame,
                "--json",
                "--typed",
                FormattableString.Invariant(
                    $"{typed.RightAscension.Degrees}, {typed.Declination.Degrees + 0.5}"
                )
            )
            .Json()
            .GetProperty("frames")[0]
            .GetProperty("learnedOffset");
        Assert.Equal(15.0, offset.GetProperty("decArcmin").GetDouble(), 0.01);
    }

    [Fact]
    public void Check_FrameWhereTheOtherFrameOfCoordinatesLeads_NamesTheKey()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        var frame = MadeFrames.Frame(session, "a.fits", MadeFrames.Time.ToOfDate(Panel), 20.0);
        Assert.Contains(
            "mount.goto_frame = \"J2000\"",
            session.Run("check", plan, frame).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Check_WithTheDialsReading_GivesDialSettingsFromThenOn()
    {
        using var session = new Session();
        session.Write("mount.toml", "# mine\ntype = \"wedge\" # as it is\n");
        var plan = session.Write(
            "plan.toml",
            "mount = \"mount.toml\"\n" + MadeFrames.Plan(Panel, 20.0)
        );
        var frame = MadeFrames.Frame(session, "a.fits", Panel, 50.0);
        var first = session.Run("check", plan, frame, "--dial", "62", "--json");

        // Up at 50° with the dial at 62°: up is north at 12°; the planned 20° stand at 32°.
        Assert.Equal(
            32.0,
            first.Json().GetProperty("frames")[0].GetProperty("dialDeg").GetDouble(),
            0.01
        );
        Assert.Equal(
            "# mine\ntype = \"wedge\" # as it is\ndial_zero_deg = 12.0 # learned\n",
            File.ReadAllText(Path.Combine(session.Folder, "mount.toml"))
        );
        Assert.Contains(
            "The dial then reads 32°.",
            session.Run("check", plan, frame).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Check_AnotherFocalLength_OffersAndCorrectsTheRig()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        var frame = MadeFrames.Frame(session, "a.fits", Panel, 20.0, scale: 250.0 / 252.5);
        var offer = session.Run("check", plan, frame);
        Assert.Contains("shows a focal length of 252.5 mm", offer.Words, StringComparison.Ordinal);
        Assert.Contains("--correct-rig", offer.Output, StringComparison.Ordinal);
        Assert.Equal(0, session.Run("check", plan, frame, "--correct-rig").Code);
        Assert.Contains(
            "focal_length_mm = 252.5\n",
            File.ReadAllText(plan),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "focal length",
            session.Run("check", plan, frame).Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Check_AfterAMove_LearnsTheRate()
    {
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(Panel, 20.0).Replace("[60, 40]", "[130, 130]", StringComparison.Ordinal)
        );
        var panel = MadeFrames.Time.ToOfDate(Panel);
        SkyDirection South(double arcmin) =>
            MadeFrames.Time.ToIcrs(
                SkyDirection.FromRaDec(
                    panel.RightAscension,
                    panel.Declination - Angle.FromArcminutes(arcmin)
                )
            );

        // 20' north are asked for; the keys run at 90 %.
        var before = MadeFrames.Frame(session, "a.fits", South(20.0), 20.0);
        var after = MadeFrames.Frame(
            session,
            "b.fits",
            South(2.0),
            20.0,
            MadeFrames.Evening.AddMinutes(5)
        );
        Assert.Equal(0, session.Run("check", plan, before).Code);
        var outcome = session.Run("check", plan, after, "--after", before);
        Assert.Contains("run at 90 %", outcome.Error, StringComparison.Ordinal);
        Assert.Contains(
            "rate_factor = [1.0, 0.9]",
            File.ReadAllText(plan),
            StringComparison.Ordinal
        );

        // A second time the same is learned, not the same again on top of it.
        session.Run("check", plan, after, "--after", before);
        Assert.Contains(
            "rate_factor = [1.0, 0.9]",
            File.ReadAllText(plan),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Check_NewestOfAFolder_TakesTheLastFinishedFrameOnce()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        Directory.CreateDirectory(Path.Combine(session.Folder, "in"));
        void Settled(string name, int seconds) =>
            File.SetLastWriteTimeUtc(
                Path.Combine(session.Folder, name),
                DateTime.UtcNow.AddSeconds(-seconds)
            );
        MadeFrames.Frame(session, "in/old.fits", Panel, 10.0);
        Settled("in/old.fits", 60);
        MadeFrames.Frame(session, "in/new.fits", Panel, 20.0, MadeFrames.Evening.AddMinutes(3));
        Settled("in/new.fits", 30);

        var first = session.Run("check", plan, "--newest", Path.Combine(session.Folder, "in"));
        Assert.Contains("new.fits, panel 1", first.Output, StringComparison.Ordinal);

        // It was checked: now a newer one is waited for, and one that is still being written is none.
        var half = File.ReadAllBytes(Path.Combine(session.Folder, "in/new.fits"));
        session.Write("in/half.fits", string.Empty);
        File.WriteAllBytes(Path.Combine(session.Folder, "in/half.fits"), half[..20_000]);
        Settled("in/half.fits", 10);
        var second = session.Run(
            "check",
            plan,
            "--newest",
            Path.Combine(session.Folder, "in"),
            "--wait",
            "0"
        );
        Assert.Equal(3, second.Code);
        Assert.Contains("No new frame", second.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("over.png", 0x89)]
    [InlineData("over.svg", (int)'<')]
    public void Check_WithAPicture_DrawsPlanAndFrame(string name, int first)
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        var frame = MadeFrames.Frame(session, "a.fits", Panel, 26.0);
        var outcome = session.Run("check", plan, frame, "--picture", name, "--size", "640x400");
        Assert.Equal(0, outcome.Code);
        Assert.Equal(first, File.ReadAllBytes(Path.Combine(session.Folder, name))[0]);
    }

    [Fact]
    public void Check_FrameWithoutASolution_SaysWhyAndEndsInThree()
    {
        using var session = new Session();
        var plan = session.Write("plan.toml", MadeFrames.Plan(Panel, 20.0));
        var frame = MadeFrames.Frame(session, "a.fits", Panel, 20.0, solved: false);
        var outcome = session.Run("check", plan, frame, "--json");
        Assert.Equal(3, outcome.Code);
        Assert.False(outcome.Json().GetProperty("frames")[0].GetProperty("solved").GetBoolean());
    }

    [Fact]
    public void Check_WithoutAFrame_SaysWhatToName()
    {
        using var session = new Session();
        var outcome = session.Run("check", "plan.toml");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("--newest FOLDER", outcome.Error, StringComparison.Ordinal);
    }
}
