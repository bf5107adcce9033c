using System.Runtime.CompilerServices;
using System.Runtime.Loader;
using Framing.Strategies;

namespace Framing.Workshop.Tests;

public sealed class PluginShelfTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("plugins-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Open_BesideTheProgram_ListsEveryStrategyWithoutFault()
    {
        var shelf = PluginShelf.Open(PluginShelf.FolderBesideProgram);

        Assert.Equal(
            [
                "Rotation along-drift RotationToAxes",
                "Rotation along-galactic-plane RotationToAxes",
                "Rotation along-outline RotationToOutline",
                "Rotation at-angle RotationAsItIs",
                "Rotation east-up RotationToAxes",
                "Rotation fewest-panels RotationFewestPanels",
                "Rotation keep-camera-angle RotationAsItIs",
                "Rotation north-up RotationToAxes",
                "Rotation to-outline RotationToOutline",
                "Overlap arcminutes OverlapFixed",
                "Overlap for-pointing OverlapForPointing",
                "Overlap for-registration OverlapForRegistration",
                "Overlap fraction OverlapFixed",
            ],
            shelf.Strategies.Select(found => $"{found.Kind} {found.Name} {found.Plugin}")
        );
        Assert.Empty(shelf.Faults);
        Assert.All(shelf.Strategies, found => Assert.NotEmpty(found.Summary));
        Assert.All(shelf.Strategies, found => Assert.Equal(new(1, 0, 0, 0), found.ContractVersion));
    }

    [Fact]
    public void Open_Settings_AreThoseOfTheAttributes()
    {
        var settings = Shelves.Find(StrategyKind.Rotation, "many-settings").Settings;

        Assert.Equal(
            [
                "plain Number any number -> a number",
                "least_deg Number a number with a floor 0 -> a number, -5 or more",
                "most_deg Number a number with a ceiling 1e0 -> a number, 5 or less",
                "both_deg Number a number between 2 -> a number from 1 to 2.5",
                "below Number a number below 2.5 -> a number, less than 3",
                "side Text which side long -> \"long\" or \"short\"",
                "label Text any text  -> a text",
                "turn Flag whether to turn true -> true or false",
            ],
            settings.Select(setting =>
                $"{setting.Name} {setting.Kind} {setting.Summary}{(setting.Default is { } value ? " " + value : "")} -> {StrategySettingsReader.Wanted(setting)}"
            )
        );
    }

    [Fact]
    public void Open_ListingOnly_LoadsNothing()
    {
        // A name of its own, so that no other test can have loaded it.
        Copy(Shelves.Plugin("SameNames"), "ListedOnly.dll");

        Assert.NotEmpty(PluginShelf.Open(folder).Strategies);

        Assert.DoesNotContain(
            AssemblyLoadContext.All.SelectMany(context => context.Assemblies),
            assembly => assembly.Location == Path.Combine(folder, "ListedOnly.dll")
        );
    }

    [Fact]
    public void Open_AnotherMajorVersion_IsRefusedInOneLineAndTheRestWorks()
    {
        var shelf = PluginShelf.Open(Shelves.TestPlugins);

        var fault = Assert.Single(
            shelf.Faults,
            fault => fault.File.EndsWith("BuiltForTomorrow.dll", StringComparison.Ordinal)
        );
        Assert.Equal(
            $"plugin {Shelves.Plugin("BuiltForTomorrow")}: built for version 2.0 of the strategy contract, this program has 1.0; left out until it is built again",
            fault.Line
        );
        Assert.Null(shelf.Find(StrategyKind.Rotation, "tomorrow", out _));
        Assert.NotNull(shelf.Find(StrategyKind.Rotation, "needs-nothing", out _));
    }

    [Theory]
    [InlineData(
        "AnswersNeither",
        "answers-neither",
        "implements neither IRotationStrategy nor IOverlapStrategy"
    )]
    [InlineData("IsAbstract", "is-abstract", "the class is abstract")]
    [InlineData("IsGeneric`1", "is-generic", "the class is generic")]
    [InlineData(
        "NeedsAnArgument",
        "needs-an-argument",
        "the class has no public constructor without parameters"
    )]
    [InlineData("IsInternal", "is-internal", "the class is not public")]
    [InlineData("BadName", "Bad Name", "a strategy's name is small letters, digits and hyphens")]
    [InlineData("BadKey", "bad-key", "a setting's name is small letters, digits and underscores")]
    [InlineData("TwiceDeclared", "twice-declared", "declares the setting \"angle_deg\" twice")]
    [InlineData(
        "KeyOfThePlan",
        "key-of-the-plan",
        "the setting \"camera_angle_deg\" is a key of the plan itself"
    )]
    [InlineData(
        "BadDefault",
        "bad-default",
        "the default of \"angle_deg\" is not a number, 360 or less"
    )]
    [InlineData(
        "UnknownKind",
        "unknown-kind",
        "the setting \"angle_deg\" is of a kind that this program does not know"
    )]
    public void Open_ClassWrittenWrongly_IsNamedWithTheReason(
        string type,
        string name,
        string problem
    )
    {
        var shelf = PluginShelf.Open(Shelves.TestPlugins);

        Assert.Single(
            shelf.Faults,
            fault =>
                fault.Line
                == $"plugin {Shelves.Plugin("Misbehaving")}: class Framing.TestPlugins.WrittenWrongly+{type}, strategy \"{name}\": {problem}; left out"
        );
        Assert.DoesNotContain(shelf.Strategies, found => found.Name == name);
    }

    [Fact]
    public void Open_NestedClassAnsweringThroughItsBase_IsFoundAndWorks()
    {
        using var strategy = Load("nested-and-sound");

        Assert.Equal(44.0, strategy.Choose(Questions.Rotation()).Angle!.Value.Degrees, 12);
    }

    [Fact]
    public void Open_FilesThatAreNoAssemblies_AreNamedInOneLineEachAndTheRestWorks()
    {
        var sound = File.ReadAllBytes(Shelves.Plugin("SameNames"));
        Write("a-text.dll", "This was a note to myself.\n"u8);
        Write("b-empty.dll", []);
        Write("c-cut.dll", sound.AsSpan(0, sound.Length / 2));
        Write("d-header-only.dll", sound.AsSpan(0, 200));
        Write("e-native.dll", File.ReadAllBytes(NativeLibrary()));
        Write("f-sound.dll", sound);
        Write("not-a-plugin.txt", "no DLL, no line"u8);

        var shelf = PluginShelf.Open(folder);

        Assert.Equal(
            ["a-text.dll", "b-empty.dll", "c-cut.dll", "d-header-only.dll", "e-native.dll"],
            shelf.Faults.Select(fault => Path.GetFileName(fault.File))
        );
        Assert.All(
            shelf.Faults,
            fault =>
            {
                Assert.StartsWith("not a .NET assembly", fault.Problem, StringComparison.Ordinal);
                Assert.DoesNotContain('\n', fault.Line);
            }
        );
        Assert.Equal(["north-up", "north-up"], shelf.Strategies.Select(found => found.Name));
    }

    [Fact]
    public void Open_DamagedAnywhere_NeverThrows()
    {
        var sound = File.ReadAllBytes(Shelves.Plugin("SameNames"));
        var random = new Random(20261205);
        var file = Path.Combine(folder, "Damaged.dll");
        var refused = 0;
        for (var trial = 0; trial < 600; trial++)
        {
            var damaged = (byte[])sound.Clone();
            for (var flip = 0; flip <= trial % 8; flip++)
            {
                damaged[random.Next(damaged.Length)] = (byte)random.Next(256);
            }

            File.WriteAllBytes(file, damaged);
            var shelf = PluginShelf.Open(folder);
            Assert.All(shelf.Faults, fault => Assert.DoesNotContain('\n', fault.Line));
            refused += shelf.Strategies.Count < 2 ? 1 : 0;
        }

        Assert.InRange(refused, 20, 580);
    }

    [Fact]
    public void Open_AssemblyWithoutStrategies_IsNamedOnlyWhereItMustBeAPlugin()
    {
        var library = Path.Combine(Shelves.TestPlugins, "BringsItsLibrary", "OwnLibrary.dll");
        Copy(library, "OwnLibrary.dll");
        Copy(library, Path.Combine("OwnLibrary", "OwnLibrary.dll"));
        Copy(Path.Combine(AppContext.BaseDirectory, "Framing.Sky.dll"), "Framing.Sky.dll");
        Copy(
            Path.Combine(AppContext.BaseDirectory, "Framing.Catalogue.dll"),
            Path.Combine("Loose", "Framing.Catalogue.dll")
        );

        var shelf = PluginShelf.Open(folder);

        var fault = Assert.Single(shelf.Faults);
        Assert.Equal(
            $"plugin {Path.Combine(folder, "OwnLibrary", "OwnLibrary.dll")}: holds no strategy: it does not use the strategy contract",
            fault.Line
        );
        Assert.Empty(shelf.Strategies);
    }

    [Fact]
    public void Open_SameNameInTwoFolders_TheEarlierFolderWinsAndTheOtherIsNamed()
    {
        Copy(Shelves.Plugin("SameNames"), "SameNames.dll");
        var theirs = Path.Combine(folder, "SameNames.dll");
        var ours = Path.Combine(
            PluginShelf.FolderBesideProgram,
            "RotationToAxes",
            "RotationToAxes.dll"
        );

        var shelf = PluginShelf.Open(folder, PluginShelf.FolderBesideProgram);

        Assert.Equal(theirs, Shelves.Find(shelf, StrategyKind.Rotation, "north-up").File);
        Assert.Equal(theirs, Shelves.Find(shelf, StrategyKind.Overlap, "north-up").File);
        Assert.Equal(ours, Shelves.Find(shelf, StrategyKind.Rotation, "east-up").File);
        Assert.Equal(
            $"plugin {ours}, strategy \"north-up\": left out, {theirs} has the same name",
            Assert.Single(shelf.Faults).Line
        );
    }

    [Fact]
    public void Open_TheSameFolderTwice_CountsOnce()
    {
        var shelf = PluginShelf.Open(
            PluginShelf.FolderBesideProgram,
            Path.Combine(PluginShelf.FolderBesideProgram, ".")
        );

        Assert.Empty(shelf.Faults);
    }

    [Theory]
    [InlineData("")]
    [InlineData("nowhere")]
    public void Open_NoSuchFolder_IsOneLine(string name)
    {
        var missing = name.Length == 0 ? name : Path.Combine(folder, name);

        var shelf = PluginShelf.Open(missing, PluginShelf.FolderBesideProgram);

        Assert.Equal("there is no such folder", Assert.Single(shelf.Faults).Problem);
        Assert.NotEmpty(shelf.Strategies);
    }

    [Theory]
    [InlineData(
        StrategyKind.Rotation,
        "nort-up",
        "unknown rotation strategy \"nort-up\"; did you mean \"north-up\"?"
    )]
    [InlineData(
        StrategyKind.Rotation,
        "NORTH_UP",
        "unknown rotation strategy \"NORTH_UP\"; did you mean \"north-up\"?"
    )]
    [InlineData(
        StrategyKind.Overlap,
        "farction",
        "unknown overlap strategy \"farction\"; did you mean \"fraction\"?"
    )]
    [InlineData(
        StrategyKind.Overlap,
        "xyz",
        "unknown overlap strategy \"xyz\"; there are arcminutes, for-pointing, for-registration, fraction"
    )]
    [InlineData(
        StrategyKind.Rotation,
        "fraction",
        "\"fraction\" is a strategy for overlap, not for rotation"
    )]
    public void Find_UnknownName_SuggestsTheNearest(StrategyKind kind, string name, string expected)
    {
        var shelf = PluginShelf.Open(PluginShelf.FolderBesideProgram);

        Assert.Null(shelf.Find(kind, name, out var problem));
        Assert.Equal(expected, problem);
    }

    [Fact]
    public void Find_EmptyShelf_SaysThatNothingWasFound()
    {
        Assert.Null(
            PluginShelf.Open(folder).Find(StrategyKind.Overlap, "fraction", out var problem)
        );
        Assert.Equal(
            "unknown overlap strategy \"fraction\"; no plugin with a strategy for overlap was found",
            problem
        );
    }

    [Fact]
    public void LoadRotation_OfAnOverlapStrategy_IsABrokenPromise() =>
        Assert.Throws<ArgumentException>(() =>
            PluginShelf.LoadRotation(Shelves.Find(StrategyKind.Overlap, "fraction"), out _)
        );

    [Fact]
    public void LoadRotation_FileGoneSinceListing_IsAFault()
    {
        Copy(Shelves.Plugin("SameNames"), "SameNames.dll");
        var found = Shelves.Find(PluginShelf.Open(folder), StrategyKind.Rotation, "north-up");
        File.Delete(found.File);

        Assert.Null(PluginShelf.LoadRotation(found, out var fault));
        Assert.NotNull(fault);
        Assert.DoesNotContain('\n', fault.Line);
    }

    [Theory]
    [InlineData(
        StrategyKind.Rotation,
        "throws-when-made",
        "threw InvalidOperationException: no ring found"
    )]
    [InlineData(
        StrategyKind.Rotation,
        "needs-it-to-exist",
        "needs LostLibrary 0.1.0.0, which is not beside it"
    )]
    [InlineData(
        StrategyKind.Overlap,
        "throws-before-made",
        "threw FormatException: The input string 'a third' was not in a correct format."
    )]
    public void Load_ThrowsWhileBeingMade_NamesPluginAndStrategy(
        StrategyKind kind,
        string name,
        string problem
    )
    {
        var found = Shelves.Find(kind, name);

        PluginFault? fault;
        if (kind == StrategyKind.Rotation)
        {
            Assert.Null(PluginShelf.LoadRotation(found, out fault));
        }
        else
        {
            // The class is set up when it is first touched: when it is made, or when it is first asked.
            using var loaded = PluginShelf.LoadOverlap(found, out fault);
            loaded?.Choose(Questions.Overlap());
            fault ??= loaded?.Fault;
        }

        Assert.Equal($"plugin {found.File}, strategy \"{name}\": {problem}", fault?.Line);
    }

    [Fact]
    public void LoadRotation_PluginWithItsOwnLibrary_FindsIt()
    {
        using var strategy = Load("from-own-library");

        Assert.Equal(77.0, strategy.Choose(Questions.Rotation()).Angle!.Value.Degrees, 12);
    }

    [Fact]
    public void LoadRotation_CopiesOfTheContractBesideThePlugin_AreNotTaken()
    {
        Copy(Shelves.Plugin("SameNames"), Path.Combine("SameNames", "SameNames.dll"));
        foreach (
            var name in new[]
            {
                "Framing.Strategies",
                "Framing.Mosaics",
                "Framing.Sky",
                "NetTopologySuite",
            }
        )
        {
            Copy(
                Path.Combine(AppContext.BaseDirectory, name + ".dll"),
                Path.Combine("SameNames", name + ".dll")
            );
        }

        var shelf = PluginShelf.Open(folder);
        using var strategy = PluginShelf.LoadRotation(
            Shelves.Find(shelf, StrategyKind.Rotation, "north-up"),
            out var fault
        );

        Assert.Null(fault);
        Assert.Equal(5.0, strategy!.Choose(Questions.Rotation()).Angle!.Value.Degrees, 12);
        Assert.Empty(shelf.Faults);
    }

    [Fact]
    public void Dispose_OfALoadedStrategy_LetsItsAssembliesGo()
    {
        var context = UseAndLetGo();
        for (var round = 0; round < 20 && context.IsAlive; round++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        Assert.False(context.IsAlive);
    }

    [Fact]
    public void Choose_AfterDispose_IsABrokenPromise()
    {
        var strategy = Load("needs-nothing");
        strategy.Dispose();
        strategy.Dispose();

        Assert.Throws<ObjectDisposedException>(() => strategy.Choose(Questions.Rotation()));
    }

    // Not inlined, so that no local of the caller keeps the plugin alive.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static WeakReference UseAndLetGo()
    {
        var found = Shelves.Find(StrategyKind.Rotation, "throws-when-asked");
        using var loaded = LoadedPlugin<IRotationStrategy>.TryMake(found, out _)!;
        using var strategy = new LoadedRotation(loaded);
        Assert.Null(strategy.Choose(Questions.Rotation()).Angle);
        return new(AssemblyLoadContext.GetLoadContext(loaded.Strategy.GetType().Assembly));
    }

    private static LoadedRotation Load(string name)
    {
        var strategy = PluginShelf.LoadRotation(
            Shelves.Find(StrategyKind.Rotation, name),
            out var fault
        );
        Assert.Null(fault);
        Assert.NotNull(strategy);
        return strategy;
    }

    /// <summary>A native library that every .NET runtime has.</summary>
    private static string NativeLibrary() =>
        Path.Combine(
            Path.GetDirectoryName(typeof(object).Assembly.Location)!,
            OperatingSystem.IsWindows() ? "clrjit.dll"
                : OperatingSystem.IsMacOS() ? "libclrjit.dylib"
                : "libclrjit.so"
        );

    private void Write(string name, ReadOnlySpan<byte> bytes) =>
        File.WriteAllBytes(Path.Combine(folder, name), bytes);

    private void Copy(string from, string name)
    {
        var to = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.Copy(from, to);
    }
}
