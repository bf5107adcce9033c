using Framing.Catalogue;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>A plan file with its strategies loaded, ready to be framed: what every job that works on a plan begins with.</summary>
internal sealed class PlanFraming : IDisposable
{
    private readonly ChosenPlugin<LoadedRotation> rotation;
    private readonly ChosenPlugin<LoadedOverlap> overlap;

    private PlanFraming(
        PlanFile file,
        ChosenPlugin<LoadedRotation> rotation,
        ChosenPlugin<LoadedOverlap> overlap,
        DateOnly evening
    )
    {
        this.rotation = rotation;
        this.overlap = overlap;
        File = file;
        Evening = evening;
        var at = MiddleOfNight(evening, file.Site);
        Request = RequestMaker.Of(file, TargetOf(file, at), rotation, overlap, evening, at);
    }

    public PlanFile File { get; }

    /// <summary>The date on which the evening begins at the site.</summary>
    public DateOnly Evening { get; }

    /// <summary>What the plan asks for.</summary>
    public FramingRequest Request { get; }

    /// <summary>Opens a plan.</summary>
    /// <param name="file">The plan, as read.</param>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="time">Tells what day it is when neither plan nor call does.</param>
    /// <param name="wanted">The evening that the call names; null for the plan's own.</param>
    /// <param name="messages">Takes what the user should know.</param>
    /// <exception cref="InputException">A strategy or the target cannot be used.</exception>
    public static PlanFraming Open(
        PlanFile file,
        PluginShelf shelf,
        TimeProvider time,
        DateOnly? wanted,
        List<string> messages
    )
    {
        var evening = DateOf(wanted, file, time, messages);
        var chosenRotation = StrategyChooser.Rotation(shelf, file);
        try
        {
            var chosenOverlap = StrategyChooser.Overlap(shelf, file);
            try
            {
                return new(file, chosenRotation, chosenOverlap, evening);
            }
            catch
            {
                chosenOverlap.Dispose();
                throw;
            }
        }
        catch
        {
            chosenRotation.Dispose();
            throw;
        }
    }

    /// <summary>Works the framing out.</summary>
    /// <param name="request">The plan's own request, or a changed one.</param>
    /// <exception cref="InputException">A strategy broke or refused.</exception>
    public FramedPlan Frame(FramingRequest request)
    {
        var outcome = FramingStep.Frame(request);
        if ((rotation.Loaded.Fault ?? overlap.Loaded.Fault) is { } fault)
        {
            throw new InputException(fault.Line);
        }

        return outcome.Plan ?? throw new InputException($"{File.Path}: {outcome.Refusal}");
    }

    public void Dispose()
    {
        rotation.Dispose();
        overlap.Dispose();
    }

    private static DateOnly DateOf(
        DateOnly? wanted,
        PlanFile file,
        TimeProvider time,
        List<string> messages
    )
    {
        if ((wanted ?? file.Night.Date) is { } date)
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
