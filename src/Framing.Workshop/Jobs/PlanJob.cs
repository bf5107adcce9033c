using System.Text;
using Framing.Drawing;
using Framing.Export;
using Framing.Imaging;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The main job: reads a plan, works out the framing, writes report, table and picture.</summary>
public static class PlanJob
{
    /// <summary>Does the job.</summary>
    /// <param name="order">What is wanted.</param>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="time">Tells what day it is when neither plan nor order does.</param>
    /// <returns>The framing and where its files lie.</returns>
    /// <exception cref="InputException">The plan, a plugin or the output folder cannot be used; nothing was written.</exception>
    public static PlanDelivery Run(PlanOrder order, PluginShelf shelf, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(time);
        var messages = new List<string>();

        // Fonts and the drawing library load and compile while the plan and the catalogue are read.
        var warming = Task.Run(SkyPicture.Warm);
        var file = order.PlanPath is null
            ? PlanFileReader.ReadBuiltIn()
            : PlanFileReader.Read(order.PlanPath);
        using var framing = PlanFraming.Open(file, shelf, time, order.Date, messages);
        var request = order.LikePath is { } like
            ? LikeFrame.Apply(framing.Request, like, messages)
            : framing.Request;

        SkyFacts? backdropPlace = null;
        var backdrop = order.BackdropPath is { } path
            ? SolvedPicture.ReadBackdrop(path, order.Size, out backdropPlace)
            : null;
        var worked = WorkedPlan.Of(file, framing.Frame(request), framing.Evening);
        var (plan, notes, nights, text) = (worked.Plan, worked.Notes, worked.Nights, worked.Report);
        var report = Encoding.UTF8.GetBytes(text);
        if (plan.Impossible is not null)
        {
            return new(plan, notes, null, text, null, [], messages);
        }

        var year = TerrestrialTime.FromUtc(request.At).JulianYear;
        warming.GetAwaiter().GetResult();
        var scene = SceneMaker.Of(plan, order.Size, year, backdrop, order.MadeUp);
        if (backdropPlace is not null)
        {
            SolvedPicture.WarnIfElsewhere(
                order.BackdropPath!,
                backdropPlace,
                SkyPicture.ChartOf(scene, order.Size),
                messages
            );
        }

        var picture = SkyPicture.Compose(scene, order.Size, order.Palette);

        // One sheet, two painters that only read it: side by side.
        var vectors = Task.Run(picture.ToSvg);
        var stars = Task.Run(() => StarPictures(plan, notes, order.Palette));
        List<(string Name, byte[] Bytes)> files =
        [
            ("report.json", report),
            ("panels.csv", PanelTable.Write(plan, nights)),
            ("sky.png", picture.ToPng()),
            ("sky.svg", Encoding.UTF8.GetBytes(vectors.GetAwaiter().GetResult())),
            .. stars.GetAwaiter().GetResult(),
        ];
        if (nights is not null)
        {
            var band = NightPicture.Compose(nights, file.Title, order.Size, order.Palette);
            files.Add(("blocks.csv", BlockTable.Write(nights)));
            files.Add(("night.png", band.ToPng()));
            files.Add(("night.svg", Encoding.UTF8.GetBytes(band.ToSvg())));
        }

        var folder =
            order.OutputFolder
            ?? OutputFolder.Choose(
                order.WorkingFolder,
                OutputFolder.Name(file.Title, framing.Evening),
                report
            );
        using var set = new FileSet(folder);
        foreach (var (name, bytes) in files)
        {
            set.Add(name, bytes);
        }

        set.Commit();
        return new(
            plan,
            notes,
            nights,
            text,
            folder,
            [.. files.Select(entry => entry.Name)],
            messages
        );
    }

    private static IReadOnlyList<(string Name, byte[] Bytes)> StarPictures(
        FramedPlan plan,
        EveningNotes? notes,
        PicturePalette palette
    ) =>
        notes?.Alignment is { } alignment
            ?
            [
                .. AlignmentPictures
                    .Of(plan, alignment, palette)
                    .Select(entry => (entry.Name, entry.Picture.ToPng())),
            ]
            : [];
}
