using System.Globalization;
using System.Text;
using Framing.Drawing;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Adds up all frames of a folder, and what the ledger knows of other nights, against a plan.</summary>
public static class TallyJob
{
    private static readonly string[] Endings = [".fits", ".fit", ".fts", ".tif", ".tiff"];

    /// <summary>The ledger is written at least this often: more is never lost.</summary>
    private static readonly TimeSpan BetweenSaves = TimeSpan.FromSeconds(1.0);

    /// <summary>Does the job.</summary>
    /// <param name="order">What is wanted.</param>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="time">Tells what day it is when the plan does not.</param>
    /// <returns>The tally.</returns>
    /// <exception cref="InputException">The plan or the folder cannot be used, or the ledger cannot be written.</exception>
    public static TallyDelivery Run(TallyOrder order, PluginShelf shelf, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(time);
        var folder = Path.TrimEndingDirectorySeparator(
            Path.GetFullPath(order.Folder, order.WorkingFolder)
        );
        if (!Directory.Exists(folder))
        {
            throw new InputException(
                $"FOLDER: there is no folder \"{order.Folder}\"; name the one that holds the frames"
            );
        }

        var messages = new List<string>();
        var file = PlanFileReader.Read(order.PlanPath);
        using var framing = PlanFraming.Open(file, shelf, time, null, messages);
        var plan = framing.Frame(framing.Request);
        if (plan.Impossible is { } impossible)
        {
            return new(null, messages, impossible);
        }

        var ledger = TallyLedger.Of(order.PlanPath, messages);
        LookThrough(folder, file.Rig, plan.Pose.Centre, ledger, time);
        var tally = FrameTally.Of(
            new()
            {
                Plan = plan,
                Goals = Goals(file),
                ExpectedLoss = file.Night.ExpectedLoss,
                Frames =
                [
                    .. ledger.Entries.Select(entry =>
                        entry.Frame with
                        {
                            File = Named(entry.Path, folder),
                        }
                    ),
                ],
            }
        );
        if (order.PicturePath is { } picture)
        {
            Draw(order, plan, tally, picture, messages);
        }

        return new(tally, messages, null);
    }

    private static void LookThrough(
        string folder,
        Rig rig,
        SkyDirection near,
        TallyLedger ledger,
        TimeProvider time
    )
    {
        var files = new DirectoryInfo(folder)
            .EnumerateFiles("*", SearchOption.AllDirectories)
            .Where(file => Endings.Contains(file.Extension, StringComparer.OrdinalIgnoreCase))
            .Select(file => (File: file, Path: file.FullName.Replace('\\', '/')))
            .OrderBy(entry => entry.Path, StringComparer.Ordinal)
            .ToList();
        var there = files.Select(entry => entry.Path).ToHashSet(StringComparer.Ordinal);
        ledger.KeepOnly(folder.Replace('\\', '/'), there);
        var saved = time.GetTimestamp();
        foreach (var (file, path) in files)
        {
            var (length, written) = (file.Length, file.LastWriteTimeUtc.Ticks);
            if (ledger.Unchanged(path, length, written) is not null)
            {
                continue;
            }

            ledger.Put(new(path, length, written, ShotReader.Look(path, rig, near)));
            if (time.GetElapsedTime(saved) >= BetweenSaves)
            {
                ledger.Save();
                saved = time.GetTimestamp();
            }
        }

        ledger.Save();
    }

    /// <summary>Inside the folder by the path from there, else whole.</summary>
    private static string Named(string path, string folder)
    {
        var inside = folder.Replace('\\', '/').TrimEnd('/') + "/";
        return path.StartsWith(inside, StringComparison.Ordinal) ? path[inside.Length..] : path;
    }

    private static IReadOnlyList<TallyGoal> Goals(PlanFile file)
    {
        var night = file.Night;
        var whole = night.GoalPerPanel.TotalSeconds;
        var shares = night.Filters.Sum(filter => filter.Share);
        return night.Filters.Count == 0
            ? [new(string.Empty, 0.0, whole)]
            :
            [
                .. night.Filters.Select(filter => new TallyGoal(
                    filter.Name,
                    filter.Sub.TotalSeconds,
                    whole * filter.Share / shares
                )),
            ];
    }

    /// <summary>One picture a filter: unlike light is not added up.</summary>
    private static void Draw(
        TallyOrder order,
        FramedPlan plan,
        PlanTally tally,
        string path,
        List<string> messages
    )
    {
        var shots = tally.Panels.SelectMany(panel => panel.Shots).ToList();
        var filters = shots
            .GroupBy(shot => shot.Filter ?? string.Empty, StringComparer.OrdinalIgnoreCase)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .ToList();
        if (filters.Count == 0)
        {
            messages.Add($"{path} was not drawn: no frame counts yet.");
            return;
        }

        var year = TerrestrialTime.FromUtc(plan.Request.At).JulianYear;
        foreach (var filter in filters)
        {
            var depth = new ExposureDepth([
                .. filter.Select(shot => (shot.Corners, shot.ExposureSeconds ?? 0.0)),
            ]);
            var scene = SceneMaker.Of(plan, order.Size, year, depth, MadeUpParts.None) with
            {
                Summary = string.Create(
                    CultureInfo.InvariantCulture,
                    $"Exposure so far{(filter.Key.Length > 0 ? " through " + filter.Key : string.Empty)}: from none (dark) to {depth.DeepestSeconds / 3600.0:0.0#} h (bright)."
                ),
            };
            var picture = SkyPicture.Compose(scene, order.Size, order.Palette);
            var name = filters.Count == 1 ? path : Beside(path, filter.Key);
            OutputFile.Write(
                Path.GetFullPath(name, order.WorkingFolder),
                name.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)
                    ? Encoding.UTF8.GetBytes(picture.ToSvg())
                    : picture.ToPng()
            );
            messages.Add($"The exposure's depth is drawn in {name}.");
        }
    }

    private static string Beside(string path, string filter) =>
        Path.ChangeExtension(path, null)
        + "-"
        + OutputFolder.Name(filter, null)
        + Path.GetExtension(path);
}
