using Framing.Fits;

namespace Framing.Workshop;

/// <summary>Files that belong together, written into one folder all or none.</summary>
/// <remarks>
/// <para>
/// Each file is written whole beside its place under a name of its own and flushed to the disk. <see cref="Commit"/> then
/// puts them all in place: a new folder by one renaming, files of a folder that is there by one renaming each, and if
/// one of those fails the earlier ones are taken back. Without a commit everything is removed again.
/// </para>
/// <para>Other files of the folder are left alone.</para>
/// </remarks>
internal sealed class FileSet : IDisposable
{
    private readonly string folder;
    private readonly string workshop;
    private readonly bool isNewFolder;
    private readonly List<string> newParents = [];
    private readonly List<string> names = [];
    private bool closed;

    /// <summary>Starts a set.</summary>
    /// <param name="folder">The folder; it and those above it are made if they are not there.</param>
    /// <exception cref="InputException">A file stands in its place, or nothing may be written there.</exception>
    public FileSet(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        this.folder = folder;
        var whole = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(whole))
        {
            throw new InputException(
                $"{folder}: a file stands where the folder should be; name another folder"
            );
        }

        // The files in the making lie in a folder of their own on the same disk: beside a new folder, inside an old one.
        isNewFolder = !Directory.Exists(whole);
        var parent = isNewFolder ? Path.GetDirectoryName(whole) ?? whole : whole;
        workshop = Path.Combine(parent, WholeFile.PartName(Path.GetFileName(whole)));
        for (
            var above = parent;
            above is { Length: > 0 } && !Directory.Exists(above);
            above = Path.GetDirectoryName(above)
        )
        {
            newParents.Add(above);
        }

        try
        {
            WriteFaults.Guard(folder, () => Directory.CreateDirectory(workshop));
        }
        catch (InputException)
        {
            RemoveParents();
            throw;
        }
    }

    /// <summary>The folder as it was named.</summary>
    public string Folder => folder;

    /// <summary>Adds a file.</summary>
    /// <param name="name">Its plain name, such as "report.json".</param>
    /// <param name="content">Its bytes.</param>
    /// <exception cref="InputException">It cannot be written.</exception>
    public void Add(string name, ReadOnlyMemory<byte> content) =>
        Add(name, stream => stream.Write(content.Span));

    /// <summary>Adds a file.</summary>
    /// <param name="name">Its plain name, such as "sky.png"; each name once.</param>
    /// <param name="write">Writes its bytes.</param>
    /// <exception cref="InputException">It cannot be written.</exception>
    /// <exception cref="ArgumentException">The name holds a folder, or was added before.</exception>
    public void Add(string name, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        ObjectDisposedException.ThrowIf(closed, this);
        if (
            string.IsNullOrWhiteSpace(name)
            || name is "." or ".."
            || name.AsSpan().IndexOfAny('/', '\\') >= 0
        )
        {
            throw new ArgumentException($"\"{name}\" is no plain file name.", nameof(name));
        }

        if (names.Contains(name, StringComparer.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"\"{name}\" was added before.", nameof(name));
        }

        WriteFaults.Guard(
            Path.Combine(folder, name),
            () => WholeFile.Create(Path.Combine(workshop, name), write)
        );
        names.Add(name);
    }

    /// <summary>Puts all files in place.</summary>
    /// <exception cref="InputException">That is not possible; nothing was changed.</exception>
    public void Commit()
    {
        ObjectDisposedException.ThrowIf(closed, this);
        WriteFaults.Guard(
            folder,
            () =>
            {
                if (isNewFolder)
                {
                    Directory.Move(
                        workshop,
                        Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))
                    );
                }
                else
                {
                    PutInPlace();
                }
            }
        );
        newParents.Clear();
        Dispose();
    }

    /// <summary>Removes what was written, unless it was put in place.</summary>
    public void Dispose()
    {
        if (closed)
        {
            return;
        }

        closed = true;
        if (Directory.Exists(workshop))
        {
            WriteFaults.Forgive(() => Directory.Delete(workshop, recursive: true));
        }

        RemoveParents();
    }

    // Innermost first; one that somebody has put something into meanwhile stays.
    private void RemoveParents() =>
        newParents.ForEach(parent => WriteFaults.Forgive(() => Directory.Delete(parent)));

    private void PutInPlace()
    {
        var old = Path.Combine(workshop, "old");
        Directory.CreateDirectory(old);
        foreach (var name in names.Where(name => File.Exists(Path.Combine(folder, name))))
        {
            File.Copy(Path.Combine(folder, name), Path.Combine(old, name));
        }

        var done = new List<string>();
        try
        {
            foreach (var name in names)
            {
                File.Move(
                    Path.Combine(workshop, name),
                    Path.Combine(folder, name),
                    overwrite: true
                );
                done.Add(name);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            done.ForEach(name => TakeBack(name, old));
            if (names.Find(name => Directory.Exists(Path.Combine(folder, name))) is { } taken)
            {
                throw new IOException($"a folder stands where {taken} should be", fault);
            }

            throw;
        }
    }

    private void TakeBack(string name, string old)
    {
        var place = Path.Combine(folder, name);
        var before = Path.Combine(old, name);
        WriteFaults.Forgive(() =>
        {
            if (File.Exists(before))
            {
                File.Move(before, place, overwrite: true);
            }
            else
            {
                File.Delete(place);
            }
        });
    }
}
