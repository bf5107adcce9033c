using Framing.Export;
using Framing.Nights;
using Framing.Planning;

namespace Framing.Workshop;

/// <summary>A framing with everything that goes beside it: what every face shows of a plan.</summary>
internal sealed record WorkedPlan
{
    /// <summary>The framing; coordinates of date are for the middle of each panel's first block, else of the dark time.</summary>
    public required FramedPlan Plan { get; init; }

    /// <summary>The sums of the evening; null where there are no panels.</summary>
    public required EveningNotes? Notes { get; init; }

    /// <summary>The nights; null where the plan names no site, or there are no panels.</summary>
    public required PlannedNights? Nights { get; init; }

    /// <summary>The text of report.json.</summary>
    public required string Report { get; init; }

    /// <summary>Works out what goes beside a framing.</summary>
    /// <param name="file">The plan as read.</param>
    /// <param name="framed">The framing.</param>
    /// <param name="evening">The date on which the evening begins at the site.</param>
    public static WorkedPlan Of(PlanFile file, FramedPlan framed, DateOnly evening)
    {
        var nights = NightsMaker.Of(file, framed, evening) is { } wanted
            ? NightsStep.Plan(wanted)
            : null;
        var plan = TimesOf(framed, nights);
        var notes = plan.Panels.Count > 0 ? EveningMaker.Of(file, plan, evening) : null;
        return new()
        {
            Plan = plan,
            Notes = notes,
            Nights = nights,
            Report = ReportWriter.WriteText(plan, ProgramVersion.Text, notes, nights),
        };
    }

    private static FramedPlan TimesOf(FramedPlan plan, PlannedNights? nights) =>
        nights is null
            ? plan
            : plan with
            {
                Panels =
                [
                    .. plan.Panels.Select(panel =>
                        panel.SeenAt(
                            nights.Blocks.FirstOrDefault(block => block.Panel == panel.Number)
                                is { } first
                                ? first.Middle
                                : nights.Nights[0].Middle,
                            plan.Request
                        )
                    ),
                ],
            };
}
