using Framing.Fits;
using Framing.Imaging;

namespace Framing.Workshop;

/// <summary>Waits for the newest finished frame of a folder.</summary>
internal static class NewestFrame
{
    private static readonly string[] Endings =
    [
        ".fits",
        ".fit",
        ".fts",
        ".png",
        ".jpg",
        ".jpeg",
        ".tif",
        ".tiff",
    ];

    /// <summary>A file that was not written to for this long is finished, if it can be read to its end.</summary>
    private static readonly TimeSpan Settled = TimeSpan.FromSeconds(1.0);

    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(0.5);

    /// <summary>Finds the frame.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="isKnown">True for a frame that was checked before: then a newer one is waited for.</param>
    /// <param name="wait">How long to wait.</param>
    /// <param name="time">The clock.</param>
    /// <returns>The path; null when none came in time.</returns>
    /// <exception cref="InputException">There is no such folder.</exception>
    public static string? In(
        string folder,
        Func<PictureFacts, bool> isKnown,
        TimeSpan wait,
        TimeProvider time
    )
    {
        if (!Directory.Exists(folder))
        {
            throw new InputException(
                $"--newest: there is no folder \"{folder}\"; name the one that the camera's frames are saved to"
            );
        }

        var start = time.GetTimestamp();
        while (true)
        {
            if (Newest(folder) is { } file && IsFinished(file) is { } facts && !isKnown(facts))
            {
                return file.FullName;
            }

            if (time.GetElapsedTime(start) >= wait)
            {
                return null;
            }

            Thread.Sleep(BetweenLooks);
        }
    }

    private static FileInfo? Newest(string folder) =>
        new DirectoryInfo(folder)
            .EnumerateFiles()
            .Where(file => Endings.Contains(file.Extension, StringComparer.OrdinalIgnoreCase))
            .OrderByDescending(file => file.LastWriteTimeUtc)
            .ThenByDescending(file => file.Name, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>What the file is, when it is whole; null while it is being written.</summary>
    private static PictureFacts? IsFinished(FileInfo file)
    {
        try
        {
            if (file.Length == 0 || (DateTime.UtcNow - file.LastWriteTimeUtc).Duration() < Settled)
            {
                return null;
            }

            // The last sample of all: a file that is still growing has none yet.
            var facts = PictureFile.Inspect(file.FullName);
            PictureFile.ReadSamples(file.FullName, new(facts.Width, 1));
            PictureFile.ReadSamples(file.FullName, new(facts.Width, facts.Height));
            return facts;
        }
        catch (Exception fault)
            when (fault is UnreadableFileException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
