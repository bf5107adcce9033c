using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Framing.Workshop;

/// <summary>Reads the keys of one table; whatever is wrong is noted and reading goes on.</summary>
/// <remarks>
/// Each key is asked for once, and what nobody asked for is unknown: there is no second list of keys. A method answers
/// null when the key is missing or wrong; the two are told apart by what was noted.
/// </remarks>
internal sealed class PlanTable
{
    private readonly PlanNotes notes;
    private readonly TomlTable table;
    private readonly List<string> asked = [];

    /// <summary>Starts to read a table.</summary>
    /// <param name="notes">Where faults go.</param>
    /// <param name="name">The table's name as keys carry it, such as "night.filter[2]"; empty at the top of the file.</param>
    /// <param name="table">The table.</param>
    /// <param name="folder">The folder that file names in this table are relative to.</param>
    public PlanTable(PlanNotes notes, string name, TomlTable table, string folder)
    {
        this.notes = notes;
        this.table = table;
        Name = name;
        Folder = folder;
        notes.Place(name, table.At, table.At, null);
        foreach (var entry in table.Entries)
        {
            notes.Place(Full(entry.Key), entry.At, entry.Value.At, entry.Value.Written);
        }
    }

    public string Name { get; }

    public string Folder { get; }

    public PlanPlace At => table.At;

    /// <summary>The keys asked for so far.</summary>
    public IReadOnlyList<string> Asked => asked;

    /// <summary>The key with its table.</summary>
    public string Full(string key) => Name.Length == 0 ? key : Name + "." + key;

    /// <summary>The value of a key, whatever it is.</summary>
    public TomlValue? Find(string key)
    {
        asked.Add(key);
        return table[key];
    }

    public bool Has(string key) => table[key] is not null;

    /// <summary>Notes that a value is wrong.</summary>
    public void Wrong(string key, TomlValue value, string problem) =>
        notes.Add(new(value.At, Full(key), value.Written, problem));

    /// <summary>Notes that a key is missing.</summary>
    public void Missing(string key, string wanted) =>
        notes.Missing(this, key, $"is missing; give {wanted}");

    public double? Number(string key, NumberRange range)
    {
        var value = Find(key);
        return value is null ? null : Number(key, value, range);
    }

    public double Number(string key, NumberRange range, double otherwise) =>
        Number(key, range) ?? otherwise;

    /// <summary>A number without which the table makes no sense; 1 when it is missing.</summary>
    public double NumberNeeded(string key, NumberRange range)
    {
        if (!Has(key))
        {
            Find(key);
            Missing(key, range.Words);
        }

        return Number(key, range) ?? 1.0;
    }

    public int Whole(string key, NumberRange range, int otherwise)
    {
        var value = Find(key);
        return value is null
            ? otherwise
            : Whole(key, value, range, $"give {range.Words}") ?? otherwise;
    }

    public bool Flag(string key, bool otherwise)
    {
        var value = Find(key);
        if (value is null or { Kind: TomlKind.Flag })
        {
            return (bool?)value?.Content ?? otherwise;
        }

        Wrong(key, value, "give true or false (small letters, no quotes)");
        return otherwise;
    }

    public string? Text(string key, int mostLetters = 200)
    {
        var value = Find(key);
        return value is null ? null : Text(key, value, mostLetters);
    }

    /// <summary>A text, where anything else has a better answer than that a text is wanted.</summary>
    public string? TextIn(string key, string wanted)
    {
        var value = Find(key);
        if (value is { Kind: not TomlKind.Text })
        {
            Wrong(key, value, wanted);
            return null;
        }

        return value is null ? null : Text(key, value, 200);
    }

    public string TextNeeded(string key, string wanted)
    {
        if (!Has(key))
        {
            Missing(key, wanted);
        }

        return Text(key) ?? "?";
    }

    /// <summary>One of a few names.</summary>
    /// <param name="key">The key.</param>
    /// <param name="otherwise">What is taken when the key is missing.</param>
    /// <param name="names">The names, in the order of the numbers that they stand for.</param>
    /// <returns>The number of the name, counted from 0: the value of an enumeration.</returns>
    public int Choice(string key, int otherwise, params string[] names)
    {
        var value = Find(key);
        if (value is null)
        {
            return otherwise;
        }

        var index = value.Kind == TomlKind.Text ? Array.IndexOf(names, (string)value.Content!) : -1;
        if (index >= 0)
        {
            return index;
        }

        Wrong(key, value, "give " + Words.Quoted(names));
        return otherwise;
    }

    /// <summary>A list of a known length, each item a number.</summary>
    public double[]? Numbers(string key, int count, NumberRange range, string wanted)
    {
        var value = Find(key);
        if (value is null)
        {
            return null;
        }

        if (value.Kind != TomlKind.List || value.Items.Count != count)
        {
            Wrong(key, value, wanted);
            return null;
        }

        var numbers = new double[count];
        for (var i = 0; i < count; i++)
        {
            if (!TryNumber(value.Items[i], out numbers[i]) || !range.Holds(numbers[i]))
            {
                Wrong(key, value, wanted);
                return null;
            }
        }

        return numbers;
    }

    /// <summary>The tables of a list: [[night.filter]], or a list of tables in braces.</summary>
    public IReadOnlyList<PlanTable> Tables(string key)
    {
        var value = Find(key);
        if (value is null)
        {
            return [];
        }

        if (value.Kind != TomlKind.List || value.Items.Any(item => item.Kind != TomlKind.Table))
        {
            Wrong(
                key,
                value,
                $"give a list of tables: [[{Full(key)}]] with two brackets each, or [ {{ … }}, {{ … }} ]"
            );
            return [];
        }

        return
        [
            .. value.Items.Select(
                (item, i) => new PlanTable(notes, Numbered(key, i), item.Table!, Folder)
            ),
        ];
    }

    /// <summary>A table in the table.</summary>
    public PlanTable? Table(string key)
    {
        var value = Find(key);
        if (value is null or { Kind: TomlKind.Table })
        {
            return value is null ? null : new(notes, Full(key), value.Table!, Folder);
        }

        Wrong(key, value, "give a table: { key = value, … }");
        return null;
    }

    /// <summary>The key of an item of a list, counted from 1.</summary>
    public string Numbered(string key, int index) =>
        string.Create(CultureInfo.InvariantCulture, $"{Full(key)}[{index + 1}]");

    /// <summary>Says where an item of a list stands, for faults found later.</summary>
    public void PlaceItems(string key, TomlValue list)
    {
        for (var i = 0; i < list.Items.Count; i++)
        {
            notes.Place(
                Numbered(key, i),
                list.Items[i].At,
                list.Items[i].At,
                list.Items[i].Written
            );
        }
    }

    /// <summary>The keys that nobody asked for, as a strategy's settings.</summary>
    public Dictionary<string, object> Rest()
    {
        var rest = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var (key, _, value) in Unasked())
        {
            switch (value.Kind)
            {
                case TomlKind.Text or TomlKind.Flag:
                    rest[key] = value.Content!;
                    break;
                case TomlKind.Whole
                or TomlKind.Number when TryNumber(value, out var number) && double.IsFinite(number):
                    rest[key] = number;
                    break;
                default:
                    Wrong(
                        key,
                        value,
                        "a strategy's setting is a finite number, a text in quotes, or true or false"
                    );
                    break;
            }
        }

        notes.Own(Name, asked);
        return rest;
    }

    /// <summary>Says that all keys were asked for: what is left is unknown.</summary>
    public void Close()
    {
        notes.Own(Name, asked);
        foreach (var entry in Unasked())
        {
            notes.Unknown(this, entry);
        }
    }

    public bool Text(string key, TomlValue value, [NotNullWhen(true)] out string? text)
    {
        text = Text(key, value, 200);
        return text is not null;
    }

    private IEnumerable<TomlEntry> Unasked() =>
        table.Entries.Where(entry => !asked.Contains(entry.Key, StringComparer.Ordinal));

    private string? Text(string key, TomlValue value, int mostLetters)
    {
        if (value.Kind != TomlKind.Text)
        {
            Wrong(key, value, "give a text in \"double quotes\"");
            return null;
        }

        var text = ((string)value.Content!).Trim();
        if (text.Any(char.IsControl))
        {
            Wrong(
                key,
                value,
                "a text holds one line; a backslash in it is written twice, or the text stands in single quotes"
            );
            return null;
        }

        if (text.Length == 0 || text.Length > mostLetters)
        {
            Wrong(
                key,
                value,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"give a text of 1 to {mostLetters} characters"
                )
            );
            return null;
        }

        return text;
    }

    private double? Number(string key, TomlValue value, NumberRange range)
    {
        if (!TryNumber(value, out var number))
        {
            Wrong(key, value, $"give a plain number without quotes or unit: {range.Words}");
            return null;
        }

        if (!range.Holds(number))
        {
            Wrong(key, value, $"give {range.Words}");
            return null;
        }

        return number;
    }

    private int? Whole(string key, TomlValue value, NumberRange range, string wanted)
    {
        if (value.Kind == TomlKind.Whole && range.Holds((long)value.Content!))
        {
            return (int)(long)value.Content;
        }

        Wrong(key, value, wanted);
        return null;
    }

    private static bool TryNumber(TomlValue value, out double number)
    {
        number = value switch
        {
            { Kind: TomlKind.Number, Content: double it } => it,
            { Kind: TomlKind.Whole, Content: long it } => it,
            _ => double.NaN,
        };
        return value.Kind is TomlKind.Number or TomlKind.Whole;
    }
}
