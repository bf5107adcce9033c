using System.Globalization;
using Framing.Export;
using Framing.Workshop;

namespace Framing.Web;

/// <summary>Cuts the plan's sentence where the page lets one change it.</summary>
/// <remarks>
/// The words are those of the command line (<see cref="SummaryText.Sentence"/>): this class finds its parts in them and
/// writes none of them itself, but for the evening, which stands at the end.
/// </remarks>
internal static class PlanSentence
{
    public static IReadOnlyList<SentencePart> Of(DeskPlan plan)
    {
        var sentence = SummaryText.Sentence(plan.Plan, plan.Nights);
        var parts = new List<SentencePart>();
        var rest = 0;
        Cut("Frame ", " at ", "target");
        if (plan.Nights is null)
        {
            Cut(" at ", ", the camera turned to ", "rig");
        }
        else
        {
            Cut(" at ", " on ", "rig");
            Cut(" on ", ", the camera turned to ", "night");
        }

        Cut("the camera turned to ", ", in ", "angle");
        if (plan.Plan.PanelCount > 1)
        {
            var follows = sentence.Contains(" that follow ", StringComparison.Ordinal);
            Cut(", in ", follows ? " that follow " : " that share ", "panels");
            Cut(" share ", " (closed ", "overlap");
        }
        else
        {
            Cut(
                ", in ",
                sentence.Contains(" panel,", StringComparison.Ordinal) ? "," : ".",
                "panels"
            );
        }

        parts.Add(new(sentence[rest..]));
        if (plan.Nights is null)
        {
            parts.Add(new(" Coordinates are for the night of "));
            parts.Add(
                new(plan.Evening.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture), "night")
            );
            parts.Add(new("."));
        }

        return parts;

        void Cut(string before, string after, string opens)
        {
            var start = sentence.IndexOf(before, rest, StringComparison.Ordinal);
            if (start < 0)
            {
                return;
            }

            start += before.Length;
            var end = sentence.IndexOf(after, start, StringComparison.Ordinal);
            if (end < 0)
            {
                return;
            }

            parts.Add(new(sentence[rest..start]));
            parts.Add(new(sentence[start..end], opens));
            rest = end;
        }
    }
}
