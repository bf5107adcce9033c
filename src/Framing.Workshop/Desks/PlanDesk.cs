using System.Security.Cryptography;
using System.Text;

namespace Framing.Workshop;

/// <summary>A plan file that is being changed: every change is worked out at once and kept beside the file until it is saved.</summary>
/// <remarks>
/// <para>
/// The desk holds nothing that is not on the disk: the plan file, and beside it the unsaved text (<c>NAME.unsaved</c>),
/// written whole after every change. Opened again after a crash it goes on with the unsaved text and says so.
/// </para>
/// <para>All members may be called from several threads; changes come one after another.</para>
/// </remarks>
public sealed class PlanDesk
{
    /// <summary>What is added to the plan file's name for the text that is not saved yet.</summary>
    public const string UnsavedSuffix = ".unsaved";

    private readonly Lock gate = new();
    private readonly PluginShelf shelf;
    private readonly TimeProvider time;
    private readonly IReadOnlySet<string> allowed;
    private string onDisk;
    private DeskPlan current;

    private PlanDesk(string path, PluginShelf shelf, TimeProvider time)
    {
        Path = path;
        Folder = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!;
        this.shelf = shelf;
        this.time = time;
        onDisk = File.Exists(path) ? TextOf(path) : string.Empty;
        var first = onDisk.Length == 0 ? StarterPlan.Text : onDisk;
        var files = new DeskPlanFiles(path, first, Folder);
        current = Worked(first, files);
        allowed = files.Taken;
        if (File.Exists(UnsavedPath) && TextOf(UnsavedPath) is var unsaved && unsaved != onDisk)
        {
            try
            {
                current = Worked(unsaved, Files(unsaved));
                WasRecovered = true;
            }
            catch (InputException)
            {
                // What was left beside the plan cannot be used (half a thought, another version): the plan itself can.
            }
        }
    }

    /// <summary>The plan file as the user named it.</summary>
    public string Path { get; }

    /// <summary>The folder of the plan file: nothing outside it is written.</summary>
    public string Folder { get; }

    /// <summary>True when the desk went on with a text that had not been saved.</summary>
    public bool WasRecovered { get; }

    /// <summary>The plan as it is now.</summary>
    public DeskPlan Current
    {
        get
        {
            lock (gate)
            {
                TakeOverFromDisk();
                return current;
            }
        }
    }

    /// <summary>True when the plan file holds what is on the desk.</summary>
    public bool IsSaved
    {
        get
        {
            lock (gate)
            {
                return string.Equals(current.Text, onDisk, StringComparison.Ordinal);
            }
        }
    }

    private string UnsavedPath => Path + UnsavedSuffix;

    /// <summary>True when a plan's own text gives a key, rather than a file that it names.</summary>
    /// <param name="text">The text of a plan.</param>
    /// <param name="key">The key with its table.</param>
    /// <returns>True when it stands there.</returns>
    public static bool Has(string text, string key) => PlanText.Has("the plan", text, key);

    /// <summary>Opens a plan.</summary>
    /// <param name="path">The plan file; one that is not there yet starts from a small example.</param>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="time">Tells what day it is when the plan does not.</param>
    /// <returns>The desk.</returns>
    /// <exception cref="InputException">The plan cannot be used.</exception>
    public static PlanDesk Open(string path, PluginShelf shelf, TimeProvider time)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(time);
        return new(path, shelf, time);
    }

    /// <summary>Changes single values; comments, order and spaces of the file stay.</summary>
    /// <param name="mark">The state that the change is made to.</param>
    /// <param name="edits">The changes, one after another, all or none.</param>
    /// <returns>The plan with the changes.</returns>
    /// <exception cref="StalePlanException">The plan is in another state by now; nothing was changed.</exception>
    /// <exception cref="InputException">The plan would not be usable with the changes; nothing was changed.</exception>
    public DeskPlan Edit(string mark, IReadOnlyList<PlanEdit> edits)
    {
        ArgumentNullException.ThrowIfNull(edits);
        lock (gate)
        {
            Expect(mark);
            var text = edits.Aggregate(
                current.Text,
                (now, edit) =>
                    edit.Value is { } value
                        ? PlanText.With(Path, now, edit.Key, value)
                        : PlanText.Without(Path, now, edit.Key)
            );
            return Take(text);
        }
    }

    /// <summary>Puts a whole text in place of the plan's: an earlier state, or one edited by hand.</summary>
    /// <param name="mark">The state that the change is made to.</param>
    /// <param name="text">The text.</param>
    /// <returns>The plan of the text.</returns>
    /// <exception cref="StalePlanException">The plan is in another state by now; nothing was changed.</exception>
    /// <exception cref="InputException">The text is no usable plan; nothing was changed.</exception>
    public DeskPlan Put(string mark, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        lock (gate)
        {
            Expect(mark);
            return Take(text);
        }
    }

    /// <summary>Writes the plan file, whole or not at all.</summary>
    /// <param name="mark">The state that is to be saved.</param>
    /// <exception cref="StalePlanException">The plan is in another state by now, or the file was changed by another program.</exception>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public void Save(string mark)
    {
        lock (gate)
        {
            if (File.Exists(Path) && !string.Equals(TextOf(Path), onDisk, StringComparison.Ordinal))
            {
                throw new StalePlanException(
                    $"{Path} has been changed by another program since it was opened. Copy what you need from the unsaved text, {UnsavedPath}, then open the plan again."
                );
            }

            Expect(mark);
            OutputFile.Write(Path, Encoding.UTF8.GetBytes(current.Text));
            onDisk = current.Text;
            File.Delete(UnsavedPath);
        }
    }

    /// <summary>The mark of a text.</summary>
    internal static string MarkOf(string text) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 8));

    private void Expect(string mark)
    {
        TakeOverFromDisk();
        if (!string.Equals(mark, current.Mark, StringComparison.Ordinal))
        {
            throw new StalePlanException();
        }
    }

    /// <summary>A file that was changed by an editor is taken over, as long as nothing here waits to be saved.</summary>
    private void TakeOverFromDisk()
    {
        if (
            !string.Equals(current.Text, onDisk, StringComparison.Ordinal)
            || !File.Exists(Path)
            || TextOf(Path) is not { } text
            || string.Equals(text, onDisk, StringComparison.Ordinal)
        )
        {
            return;
        }

        try
        {
            current = Worked(text, Files(text));
            onDisk = text;
        }
        catch (InputException)
        {
            // Half a change by an editor: the desk keeps what it has; the next look may find a whole one.
        }
    }

    private DeskPlan Take(string text)
    {
        if (string.Equals(text, current.Text, StringComparison.Ordinal))
        {
            return current;
        }

        current = Worked(text, Files(text));
        if (string.Equals(text, onDisk, StringComparison.Ordinal))
        {
            File.Delete(UnsavedPath);
        }
        else
        {
            OutputFile.Write(UnsavedPath, Encoding.UTF8.GetBytes(text));
        }

        return current;
    }

    private DeskPlanFiles Files(string text) => new(Path, text, Folder) { Allowed = allowed };

    private DeskPlan Worked(string text, DeskPlanFiles files)
    {
        var file = PlanFileReader.Read(files, Path, builtIn: false);
        var messages = new List<string>();
        using var framing = PlanFraming.Open(file, shelf, time, wanted: null, messages);
        var worked = WorkedPlan.Of(file, framing.Frame(framing.Request), framing.Evening);
        return new()
        {
            Text = text,
            Mark = MarkOf(text),
            File = file,
            Plan = worked.Plan,
            Nights = worked.Nights,
            Report = worked.Report,
            Evening = framing.Evening,
            Messages = messages,
        };
    }

    private static string TextOf(string path)
    {
        if (new DiskPlanFiles().Read(path, PlanFiles.MostTomlBytes, out var text) is { } error)
        {
            throw new PlanFileException([error]);
        }

        return text;
    }
}
