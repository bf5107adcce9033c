using Framing.Catalogue;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

/// <summary>The samples are what their comments say.</summary>
public sealed class SamplePlansTests
{
    private static readonly string Samples = Path.Combine(TestFolders.Root, "samples");

    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(Samples, "*.toml").Select(file => Path.GetFileName(file))];

    [Theory]
    [MemberData(nameof(Files))]
    public void Samples_AreRead(string file)
    {
        var plan = PlanFileReader.Read(Path.Combine(Samples, file));
        Assert.NotNull(plan.Site);
        Assert.NotNull(plan.Night.Date);
        Assert.NotEmpty(plan.Night.Filters);
        Assert.All(
            plan.Target.Names,
            name => Assert.True(ObjectCatalogue.Embedded.Find(name).IsFound, name)
        );
    }

    [Fact]
    public void EveryKey_IsInTheSampleOfThatName()
    {
        // The tests' own plan with every key is held against the reader; its keys must all be explained in the sample.
        static IEnumerable<string> Keys(string text) =>
            text.Split('\n')
                .Select(line => line.TrimStart('#', ' '))
                .Where(line => line.Contains('=', StringComparison.Ordinal))
                .Select(line => line.Split('=')[0].Trim());

        string[] ofStrategies = ["from_deg", "steady", "note"];
        var explained = Keys(File.ReadAllText(Path.Combine(Samples, "every-key.toml")))
            .ToHashSet(StringComparer.Ordinal);
        var known = Keys(PlanTexts.Full).Except(ofStrategies, StringComparer.Ordinal).ToList();
        Assert.True(known.Count > 60);
        Assert.Empty(known.Except(explained, StringComparer.Ordinal));
    }

    [Fact]
    public void BuiltIn_IsTheTwoPanelSample()
    {
        var builtIn = PlanFileReader.ReadBuiltIn();
        var sample = PlanFileReader.Read(Path.Combine(Samples, "two-panels.toml"));
        Assert.True(builtIn.IsBuiltIn);
        Assert.Equal(sample.Title, builtIn.Title);
        Assert.Equal(sample.Rig, builtIn.Rig);
        Assert.Equal(sample.Target.Names, builtIn.Target.Names);
        Assert.Equal(sample.Site!.Horizon, builtIn.Site!.Horizon);
        Assert.Equal(36, builtIn.Site.Horizon.Points.Count);
        Assert.Equal("►", builtIn.Mount.Keys.East);
    }

    [Fact]
    public void SingleFrame_FitsOneFrame() => Assert.True(Room("single-frame.toml", 1, 1) > 0.0);

    [Fact]
    public void TwoPanels_NeedTwo()
    {
        Assert.True(Room("two-panels.toml", 1, 1, withMargin: false) < -30.0);
        Assert.True(Room("two-panels.toml", 2, 1) > 0.0);
    }

    [Fact]
    public void SixPanels_AreTwoByThreeNearDeclination70()
    {
        var plan = PlanFileReader.Read(Path.Combine(Samples, "six-panels.toml"));
        Assert.Equal(GridWish.Fixed(2, 3), plan.Mosaic.Grid);
        Assert.Equal(70.0, plan.Target.Box!.Centre.Declination.Degrees, 0.5);
        Assert.True(Room("six-panels.toml", 2, 3, PositionAngle.North) > 0.0);
        Assert.True(Room("six-panels.toml", 2, 2, withMargin: false) < 0.0);
        Assert.True(Room("six-panels.toml", 1, 3, withMargin: false) < 0.0);
    }

    /// <summary>
    /// Minutes of arc left over on the tightest side at the best of many angles: a plain search, independent of the fit
    /// that plans use.
    /// </summary>
    private static double Room(
        string file,
        int columns,
        int rows,
        PositionAngle? only = null,
        bool withMargin = true
    )
    {
        var plan = PlanFileReader.Read(Path.Combine(Samples, file));
        var outline =
            plan.Target.Outline ?? SkyOutline.Together(plan.Target.Names.Select(OutlineOf));
        var field = plan.Rig.Field;
        var settings = plan.Mosaic.Overlap.Settings;
        var fraction = settings.TryGetValue("overlap_fraction", out var part) ? (double)part : 0.0;
        var shared = settings.TryGetValue("overlap_arcmin", out var minutes)
            ? Math.Tan(Angle.FromArcminutes((double)minutes).Radians)
            : 0.0;
        double Reach(int count, double size) =>
            (count * size) - ((count - 1) * ((fraction * size) + shared));
        var width = Reach(columns, field.TangentWidth);
        var height = Reach(rows, field.TangentHeight);
        var margin = withMargin ? plan.Target.Margin + plan.Night.Dither : Angle.Zero;

        // In the plane at the outline's middle, which is near enough the frame's: the limits asserted are wide.
        var best = double.NegativeInfinity;
        for (var tenth = 0; tenth < (only is null ? 1800 : 1); tenth++)
        {
            var angle = only ?? PositionAngle.FromDegrees(tenth / 10.0);
            var (sin, cos) = Math.SinCos(angle.Radians);
            var plane = new TangentPlane(outline.Middle);
            var up = new List<double>();
            var right = new List<double>();
            foreach (var corner in outline.Corners)
            {
                Assert.True(plane.TryProject(corner, out var point));
                up.Add((point.Xi * sin) + (point.Eta * cos));
                right.Add((-point.Xi * cos) + (point.Eta * sin));
            }

            best = Math.Max(
                best,
                Math.Min(width - (right.Max() - right.Min()), height - (up.Max() - up.Min())) / 2.0
            );
        }

        return Angle.FromRadians(best).Arcminutes - margin.Arcminutes;
    }

    private static SkyOutline OutlineOf(string name)
    {
        var entry = ObjectCatalogue.Embedded.Find(name).Entry as DeepSkyObject;
        return SkyOutline.Ellipse(
            entry!.MiddleOfExtent,
            entry.Major!.Value,
            entry.Minor ?? entry.Major!.Value,
            entry.MajorAxis ?? PositionAngle.North
        );
    }
}
