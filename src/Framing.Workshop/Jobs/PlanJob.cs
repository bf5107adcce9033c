using System.Text;
using Framing.Catalogue;
using Framing.Drawing;
using Framing.Export;
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
        var date = DateOf(order, file, time, messages);
        var at = MiddleOfNight(date, file.Site);
        using var rotation = StrategyChooser.Rotation(shelf, file);
        using var overlap = StrategyChooser.Overlap(shelf, file);
        var request = RequestMaker.Of(file, TargetOf(file, at), rotation, overlap, date, at);
        if (order.LikePath is { } like)
        {
            request = LikeFrame.Apply(request, like, messages);
        }

        var backdrop = order.BackdropPath is { } path
            ? SolvedPicture.ReadBackdrop(path, order.Size)
            : null;
        var outcome = FramingStep.Frame(request);
        if ((rotation.Loaded.Fault ?? overlap.Loaded.Fault) is { } fault)
        {
            throw new InputException(fault.Line);
        }

        if (outcome.Plan is not { } plan)
        {
            throw new InputException($"{file.Path}: {outcome.Refusal}");
        }

        var report = ReportWriter.Write(plan, ProgramVersion.Text);
        var text = Encoding.UTF8.GetString(report);
        if (plan.Impossible is not null)
        {
            return new(plan, text, null, [], messages);
        }

        var year = TerrestrialTime.FromUtc(at).JulianYear;
        warming.GetAwaiter().GetResult();
        var scene = SceneMaker.Of(plan, order.Size, year, backdrop, order.MadeUp);
        if (order.BackdropPath is { } shown)
        {
            SolvedPicture.WarnIfElsewhere(shown, SkyPicture.ChartOf(scene, order.Size), messages);
        }

        var picture = SkyPicture.Compose(scene, order.Size, order.Palette);

        // One sheet, two painters that only read it: side by side.
        var vectors = Task.Run(picture.ToSvg);
        (string Name, byte[] Bytes)[] files =
        [
            ("report.json", report),
            ("panels.csv", PanelTable.Write(plan)),
            ("sky.png", picture.ToPng()),
            ("sky.svg", Encoding.UTF8.GetBytes(vectors.GetAwaiter().GetResult())),
        ];
        var folder =
            order.OutputFolder
            ?? OutputFolder.Choose(
                order.WorkingFolder,
                OutputFolder.Name(file.Title, date),
                report
            );
        using var set = new FileSet(folder);
        foreach (var (name, bytes) in files)
        {
            set.Add(name, bytes);
        }

        set.Commit();
        return new(plan, text, folder, [.. files.Select(entry => entry.Name)], messages);
    }

    private static DateOnly DateOf(
        PlanOrder order,
        PlanFile file,
        TimeProvider time,
        List<string> messages
    )
    {
        if ((order.Date ?? file.Night.Date) is { } date)
        {
            return date;
        }

        var today = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        messages.Add(
            FormattableString.Invariant(
                $"The plan names no date; coordinates are for tonight, {today:yyyy-MM-dd}. For another night give [night] date or --date."
            )
        );
        return today;
    }

    /// <summary>
    /// The site's mean solar midnight after the evening: the middle of the dark time to within the equation of time (16
    /// minutes), in which coordinates of date move by far less than 0.1″. Without a site, that of Greenwich.
    /// </summary>
    private static DateTime MiddleOfNight(DateOnly date, SiteSection? site)
    {
        var midnight = date.AddDays(1).ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        var seconds = Math.Round((site?.Longitude.Hours ?? 0.0) * 3600.0);
        return midnight.AddSeconds(-seconds);
    }

    private static Target TargetOf(PlanFile file, DateTime at)
    {
        var section = file.Target;
        if (section.Outline is { } outline)
        {
            return TargetBuilder.FromOutline(NameOf(section), outline);
        }

        var entries = new List<(CatalogueEntry Entry, string Words)>();
        for (var i = 0; i < section.Names.Count; i++)
        {
            var found = ObjectCatalogue.Embedded.Find(section.Names[i]);
            var entry =
                found.Entry
                ?? throw file.Refuse(
                    FormattableString.Invariant($"target.names[{i + 1}]"),
                    UnknownName.Problem(found)
                );
            // The same object under two of its names is one object.
            if (entries.All(known => known.Entry.Id != entry.Id))
            {
                entries.Add((entry, section.Names[i]));
            }
        }

        return TargetBuilder.FromEntries(
            entries,
            name => ObjectCatalogue.Embedded.Find(name).Entry,
            TerrestrialTime.FromUtc(at).JulianYear
        );
    }

    private static string NameOf(TargetSection section) =>
        section.Box is { Centre: var centre }
            ? $"the area around {EntryText.RightAscension(centre.RightAscension, EntryFormat.HmDm)}, {EntryText.Declination(centre.Declination, EntryFormat.HmDm)}"
            : "the outline of the plan";
}
