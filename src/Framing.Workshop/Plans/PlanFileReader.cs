using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Reads plan files: TOML 1.0, every key known, every number checked, every refusal with its place.</summary>
/// <remarks>
/// <para>
/// Only [rig] and [target] are needed; what else is left out is in <see cref="PlanDefaults"/>. In place of [rig], [site]
/// and [mount] the name of a TOML file may stand (<c>rig = "short-lens.toml"</c>) that holds the table's keys, with or
/// without its header.
/// </para>
/// <para>File names are relative to the folder of the file in which they stand.</para>
/// </remarks>
public static class PlanFileReader
{
    /// <summary>Reads a plan from the disk.</summary>
    /// <param name="path">The plan file.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="PlanFileException">The plan cannot be used; all that was found is in the exception.</exception>
    public static PlanFile Read(string path) => Read(new DiskPlanFiles(), path, builtIn: false);

    /// <summary>Reads the example that the program carries: the two-panel sample.</summary>
    /// <returns>The plan.</returns>
    public static PlanFile ReadBuiltIn() =>
        Read(new EmbeddedPlanFiles(), EmbeddedPlanFiles.Plan, builtIn: true);

    /// <summary>Reads a rig file: the keys of [rig], with or without the header.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The rig.</returns>
    /// <exception cref="PlanFileException">The file cannot be used.</exception>
    public static Rig ReadRig(string path) =>
        ReadAlone(path, "rig", (_, table) => EquipmentSections.Rig(table));

    /// <summary>Reads a site file: the keys of [site], with or without the header.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The site.</returns>
    /// <exception cref="PlanFileException">The file cannot be used.</exception>
    public static SiteSection ReadSite(string path) =>
        ReadAlone(path, "site", EquipmentSections.Site);

    /// <summary>Reads a mount file: the keys of [mount], with or without the header.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The mount.</returns>
    /// <exception cref="PlanFileException">The file cannot be used.</exception>
    public static MountSection ReadMount(string path) =>
        ReadAlone(path, "mount", (_, table) => EquipmentSections.Mount(table));

    internal static PlanFile Read(PlanFiles files, string path, bool builtIn)
    {
        ArgumentNullException.ThrowIfNull(path);
        var reading = new PlanReading(files);
        var plan = new PlanTable(reading.Notes, "", reading.ReadFile(path), PlanPaths.Folder(path));
        var title = plan.Text("title") ?? Untitled(path);
        var rig = reading.Section(plan, "rig", mayBeFile: true);
        var guide = reading.Section(plan, "guide");
        var site = reading.Section(plan, "site", mayBeFile: true);
        var target = reading.Section(plan, "target");
        var rotation = reading.Section(plan, "rotation");
        var mosaic = reading.Section(plan, "mosaic");
        var mount = reading.Section(plan, "mount", mayBeFile: true);
        var night = reading.Section(plan, "night");
        var sky = reading.Section(plan, "sky");
        var power = reading.Section(plan, "power");
        plan.Close();
        Needed(
            plan,
            "rig",
            "[rig] with focal_length_mm, sensor_px and pixel_um, or rig = \"file.toml\""
        );
        Needed(plan, "target", "[target] with names = [\"…\"]");

        // Tables that are left out are read as empty ones: their values are the defaults, and a key that stands in the
        // wrong table finds its home.
        var leftOut = new List<PlanTable>();
        PlanTable Or(PlanTable? table, string name)
        {
            if (table is null)
            {
                table = new(new(), name, new(default), "");
                leftOut.Add(table);
            }

            return table;
        }

        var guideCamera = EquipmentSections.Guide(Or(guide, "guide"));
        var place = EquipmentSections.Site(reading, Or(site, "site"));
        var battery = EquipmentSections.Power(Or(power, "power"));
        var file = new PlanFile(reading.Notes)
        {
            Path = path,
            IsBuiltIn = builtIn,
            Title = title,
            Rig = EquipmentSections.Rig(Or(rig, "rig")),
            Guide = guide is null ? null : guideCamera,
            Site = site is null ? null : place,
            Target = SkySections.Target(reading, Or(target, "target")),
            Rotation = SkySections.Rotation(Or(rotation, "rotation")),
            Mosaic = SkySections.Mosaic(Or(mosaic, "mosaic")),
            Mount = EquipmentSections.Mount(Or(mount, "mount")),
            Night = SkySections.Night(Or(night, "night")),
            Sky = SkySections.Sky(Or(sky, "sky")),
            Power = power is null ? null : battery,
        };
        leftOut.ForEach(table => reading.Notes.Own(table.Name, table.Asked));
        reading.Notes.ThrowIfAny();
        return file;
    }

    private static void Needed(PlanTable plan, string table, string wanted)
    {
        if (!plan.Has(table))
        {
            plan.Missing(table, wanted);
        }
    }

    private static string Untitled(string path)
    {
        var name = Path.GetFileNameWithoutExtension(path)
            .Replace('-', ' ')
            .Replace('_', ' ')
            .Trim();
        return name.Length == 0 ? "Untitled" : name;
    }

    private static T ReadAlone<T>(string path, string name, Func<PlanReading, PlanTable, T> read)
    {
        ArgumentNullException.ThrowIfNull(path);
        var reading = new PlanReading(new DiskPlanFiles());
        var value = read(reading, reading.Standalone(path, name));
        reading.Notes.ThrowIfAny();
        return value;
    }
}
