using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class EveningLogTests : IDisposable
{
    private static readonly DateTime Dusk = new(2026, 12, 5, 19, 0, 0, 123, DateTimeKind.Utc);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("framing-");

    private string Plan => Path.Combine(folder.FullName, "plan.toml");

    [Fact]
    public void Before_AfterWritingAndReading_IsTheLastCheckOfTheEvening()
    {
        var messages = new List<string>();
        var log = EveningLog.Of(Plan, messages);
        log.Add(Entry(Dusk.AddMinutes(20), 2));
        log.Add(Entry(Dusk, 1));
        log.Add(Entry(Dusk.AddMinutes(20), 3));
        log.Save(messages);
        Assert.Empty(messages);

        var read = EveningLog.Of(Plan, messages);
        Same(Entry(Dusk.AddMinutes(20), 3), read.Before(Dusk.AddHours(1)));
        Same(Entry(Dusk, 1), read.Before(Dusk.AddMinutes(20)));
        Assert.Null(read.Before(Dusk));
        Assert.Null(read.Before(Dusk.AddHours(20)));
        Same(Entry(Dusk, 1), read.At(Dusk));
    }

    [Fact]
    public void Add_OfTheNextEvening_ForgetsTheOldOne()
    {
        var log = EveningLog.Of(Plan, []);
        log.Add(Entry(Dusk, 1));
        log.Add(Entry(Dusk.AddDays(1), 1));
        Assert.Null(log.At(Dusk));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ \"schema\": \"framing-evening/1\" }")]
    [InlineData("{ \"schema\": \"framing-evening/9\", \"checks\": [] }")]
    [InlineData("{ \"schema\": \"framing-evening/1\", \"checks\": [ { \"at\": \"noon\" } ] }")]
    public void Of_AFileThatIsNone_SaysSoAndBeginsAnew(string text)
    {
        File.WriteAllText(Path.Combine(folder.FullName, "plan.evening.json"), text);
        var messages = new List<string>();
        Assert.Null(EveningLog.Of(Plan, messages).Before(Dusk));
        Assert.Contains("begun anew", Assert.Single(messages), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Delete(recursive: true);

    /// <summary>The same but for the last bits of angles.</summary>
    private static void Same(EveningEntry expected, EveningEntry? read)
    {
        Assert.NotNull(read);
        Assert.InRange(expected.Typed.SeparationTo(read.Typed).Arcseconds, 0.0, 1e-6);
        Assert.InRange(expected.Retype.SeparationTo(read.Retype).Arcseconds, 0.0, 1e-6);
        Assert.Equal(
            expected.Declination.Backlash.Arcminutes,
            read.Declination.Backlash.Arcminutes,
            1e-9
        );
        Assert.Equal(
            expected with
            {
                Typed = read.Typed,
                Retype = read.Retype,
                Offset = read.Offset,
                RightAscension = read.RightAscension,
                Declination = read.Declination,
            },
            read
        );
        Assert.Equal(
            expected.Offset.RightAscension.Degrees,
            read.Offset.RightAscension.Degrees,
            1e-9
        );
        Assert.Equal(expected.Offset.Declination.Degrees, read.Offset.Declination.Degrees, 1e-9);
        Assert.Equal(expected.Declination.Finish, read.Declination.Finish);
        Assert.Equal(expected.Declination.RateFactor, read.Declination.RateFactor);
    }

    private static EveningEntry Entry(DateTime at, int panel) =>
        new(
            at,
            panel,
            panel == 3 ? null : CheckStep.Move,
            SkyDirection.FromDegrees(10.0, 20.0),
            SkyDirection.FromDegrees(11.0, -21.0),
            panel == 2,
            new(Angle.FromDegrees(0.5), Angle.FromDegrees(-0.25)),
            new(MountDirection.West, Angle.FromArcminutes(3.0)),
            new(MountDirection.South, Angle.FromArcminutes(2.0), 0.9)
        );
}
