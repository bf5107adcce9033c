using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Reads one plan: its own file and those it names.</summary>
internal sealed class PlanReading(PlanFiles files)
{
    private static readonly string[] TableNames =
    [
        "title",
        "rig",
        "guide",
        "site",
        "target",
        "rotation",
        "mosaic",
        "mount",
        "night",
        "sky",
        "power",
    ];

    public PlanNotes Notes { get; } = new();

    /// <summary>Reads the text of a file into a table.</summary>
    /// <exception cref="PlanFileException">The file cannot be read, or is no TOML.</exception>
    public TomlTable ReadFile(string path)
    {
        if (files.Read(path, PlanFiles.MostTomlBytes, out var text) is { } error)
        {
            throw new PlanFileException([error]);
        }

        return TomlTree.Read(path, text);
    }

    /// <summary>A table of the plan, or of the file that the plan names in its place.</summary>
    /// <param name="plan">The top of the plan.</param>
    /// <param name="name">The table's name.</param>
    /// <param name="mayBeFile">True when a file may stand in its place.</param>
    /// <returns>The table; null when it is missing or wrong.</returns>
    public PlanTable? Section(PlanTable plan, string name, bool mayBeFile = false)
    {
        switch (plan.Find(name))
        {
            case null:
                return null;
            case { Kind: TomlKind.Table } value:
                return new(Notes, name, value.Table!, plan.Folder);
            case { Kind: TomlKind.Text } value
                when mayBeFile && plan.Text(name, value, out var file):
                return FileSection(plan, name, value, file);
            case { Kind: TomlKind.List } value:
                plan.Wrong(name, value, $"give one table: [{name}] with one pair of brackets");
                return null;
            case var value:
                plan.Wrong(
                    name,
                    value,
                    $"give a table: [{name}] on a line, its keys below"
                        + (mayBeFile ? ", or the name of a file in quotes" : "")
                );
                return null;
        }
    }

    /// <summary>A file that holds one table: its keys bare, or under the table's header.</summary>
    public PlanTable Standalone(string path, string name)
    {
        var top = ReadFile(path);
        var table = top;
        if (top.Find(name) is { Value: { Kind: TomlKind.Table } value })
        {
            table = value.Table!;

            // One file may serve for several tables: the others are checked when the plan asks for them.
            var rest = new PlanTable(Notes, "", top, PlanPaths.Folder(path));
            Array.ForEach(TableNames, other => rest.Find(other));
            rest.Close();
        }

        return new(Notes, name, table, PlanPaths.Folder(path));
    }

    /// <summary>The text of a table of numbers that a key names.</summary>
    /// <returns>The path and the text; null when the key is missing, or the file cannot be read.</returns>
    public (string Path, string Text)? Csv(PlanTable table, string key)
    {
        var value = table.Find(key);
        if (value is null || !table.Text(key, value, out var name))
        {
            return null;
        }

        var path = PlanPaths.Join(table.Folder, name);
        if (files.Read(path, PlanFiles.MostCsvBytes, out var text) is { } error)
        {
            Refer(table, key, value, path, error);
            return null;
        }

        return (path, text);
    }

    private PlanTable? FileSection(PlanTable plan, string name, TomlValue value, string file)
    {
        var path = PlanPaths.Join(plan.Folder, file);
        try
        {
            return Standalone(path, name);
        }
        catch (PlanFileException fault)
        {
            Refer(plan, name, value, path, fault.Errors[0]);
            return null;
        }
    }

    // A file that cannot be opened is the fault of the key that names it; one that cannot be understood has its own place.
    private void Refer(
        PlanTable table,
        string key,
        TomlValue value,
        string path,
        PlanFileError error
    )
    {
        if (error.Place.Line == 0)
        {
            table.Wrong(key, value, $"{error.Problem}: {path}");
        }
        else
        {
            Notes.Add(error);
        }
    }
}
