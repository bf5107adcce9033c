using System.Globalization;
using System.Text;
using Framing.Mosaics;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>Says a framing in plain words, for a screen at night.</summary>
public static class SummaryText
{
    private const double ArcminutesPerTangent = 60.0 * 180.0 / Math.PI;

    /// <summary>Minutes of arc from which a length is told in degrees.</summary>
    private const double Long = 120.0;

    /// <summary>The whole plan as one sentence.</summary>
    /// <param name="plan">The framing.</param>
    /// <param name="nights">The nights; null where none are planned.</param>
    /// <returns>One sentence that ends in a full stop.</returns>
    public static string Sentence(FramedPlan plan, PlannedNights? nights = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var request = plan.Request;
        var text = new StringBuilder();
        text.Append(
            Invariant(
                $"Frame {request.Target.Name} at {Number(request.Rig.FocalLengthMillimetres, 1)} mm{NightsText.When(nights)}, the camera turned to {Turn(plan.Pose.PositionAngle)}, in {Count(plan.PanelCount, "panel", "panels")}"
            )
        );
        if (plan.PanelCount > 1)
        {
            text.Append(plan.IsRectangle ? " that share " : " that follow the outline and share ")
                .Append(Shared(plan));
            if (plan.Odds is { } odds)
            {
                text.Append(" (closed ").Append(ChanceText.Times(odds.ChanceNoGap)).Append(')');
            }
        }

        return text.Append(NightsText.Good(nights)).Append('.').ToString();
    }

    /// <summary>The whole summary: the sentence, the camera, what is covered, what to type, what to mind.</summary>
    /// <param name="plan">The framing.</param>
    /// <param name="notes">The sums of the evening; null where there are none.</param>
    /// <param name="nights">The nights; null where none are planned.</param>
    /// <returns>Lines of at most about 100 characters, each ending in a line feed.</returns>
    public static string Write(
        FramedPlan plan,
        EveningNotes? notes = null,
        PlannedNights? nights = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        var text = new StringBuilder();
        Lines.Wrap(text, string.Empty, Sentence(plan, nights));
        text.Append('\n');
        Facts(text, plan);
        if (plan.Panels.Count > 0)
        {
            text.Append('\n');
            PanelLines.Write(text, plan);
        }

        if (nights is not null)
        {
            NightsText.Write(text, nights);
        }

        if (notes is not null)
        {
            EveningText.Write(text, notes, plan.Request);
        }

        IEnumerable<string> warnings =
        [
            .. plan.Warnings,
            .. nights is null ? [] : NightWords.Warnings(nights),
            .. notes?.Evening.Cautions ?? [],
        ];
        foreach (var warning in warnings)
        {
            text.Append('\n');
            Lines.Wrap(text, "! ", warning);
        }

        if ((plan.Impossible ?? (nights is null ? null : NightWords.Nothing(nights))) is { } cannot)
        {
            text.Append('\n');
            Lines.Wrap(text, "! ", cannot);
        }

        if (notes?.Evening.Reminders is { Count: > 0 } reminders)
        {
            text.Append("\nBefore you go\n");
            foreach (var reminder in reminders)
            {
                Lines.Wrap(text, "  ", reminder);
            }
        }

        return text.ToString();
    }

    private static void Facts(StringBuilder text, FramedPlan plan)
    {
        var request = plan.Request;
        var angle = plan.Pose.PositionAngle;
        Lines.Wrap(
            text,
            "Camera  ",
            Invariant(
                $"{Turn(angle)}: the way up in the picture, from north through east ({plan.RotationReason}). {Turn(angle.Opposite)} shows the same sky upside down."
            )
        );
        if (plan.CameraTurn is { } turn)
        {
            Lines.Wrap(text, "Turn    ", Turning(turn, request.PresentCameraAngle!.Value));
        }

        Lines.Wrap(
            text,
            "Frame   ",
            Invariant($"{Field(request.Rig.Field)}, {request.Rig.Scale.Arcseconds:0.00}″ a pixel")
        );
        Lines.Wrap(text, "Margin  ", Margin(plan));
        if (plan.Coverage is { } coverage)
        {
            Lines.Wrap(
                text,
                "Covers  ",
                Invariant(
                    $"{Percent(coverage.TargetCoveredFraction)} of the outline, {Area(coverage.Area)} in all{Whole(plan.Odds)}"
                )
            );
        }
    }

    /// <summary>How often the whole outline is held when each panel is shot a little off its plan.</summary>
    private static string Whole(ClosingOdds? odds) =>
        odds?.ChanceTargetCovered is { } chance
            ? $"; with the mount's errors the whole outline {ChanceText.Times(chance)}"
            : string.Empty;

    private static string Margin(FramedPlan plan)
    {
        var wanted = Length(plan.WantedTangentMargin);
        return plan.TangentMargin >= 0.0
            ? $"{Length(plan.TangentMargin)} on the tight sides ({wanted} wanted, dithering included)"
            : $"none: the outline stands out by {Length(-plan.TangentMargin)} ({wanted} of margin wanted)";
    }

    private static string Turning(Angle turn, PositionAngle now)
    {
        var degrees = Number(Math.Abs(turn.Degrees), 1);
        return degrees == "0"
            ? "not needed: the camera stands so already."
            : $"{degrees}° {(turn.Radians > 0.0 ? "counter-clockwise" : "clockwise")}, seen from behind the camera, from {Turn(now)} where it stands now.";
    }

    /// <summary>A length in a plane as the angle it spans from the middle: minutes of arc, or degrees where it is long.</summary>
    private static string Length(double tangent)
    {
        var arcminutes = tangent * ArcminutesPerTangent;
        return arcminutes < Long
            ? Invariant($"{arcminutes:0.0}′")
            : Invariant($"{Angle.FromRadians(Math.Atan(tangent)).Degrees:0.0}°");
    }

    private static string Field(FieldShape field) =>
        field.Width.Degrees >= 0.5
            ? Invariant($"{field.Width.Degrees:0.00}° × {field.Height.Degrees:0.00}°")
            : Invariant($"{field.Width.Arcminutes:0.0}′ × {field.Height.Arcminutes:0.0}′");

    private static string Area(SolidAngle area) =>
        area.SquareDegrees >= 0.5
            ? Invariant($"{area.SquareDegrees:0.0} square degrees")
            : Invariant($"{area.SquareArcminutes:0.0} square minutes of arc");

    private static string Shared(FramedPlan plan)
    {
        var (along, across) = (Strip(plan.Overlap.AlongWidth), Strip(plan.Overlap.AlongHeight));
        return (plan.Columns > 1, plan.Rows > 1) switch
        {
            (true, true) => $"{along} side by side and {across} one above the other",
            (true, false) => along,
            _ => across,
        };
    }

    private static string Strip(double tangent) =>
        tangent * ArcminutesPerTangent < Long
            ? Invariant($"{tangent * ArcminutesPerTangent:0.#}′")
            : Length(tangent);

    private static string Percent(double fraction)
    {
        // Never "100 %" for less than all of it.
        var percent = fraction * 100.0;
        return fraction >= 1.0 - 1e-9 ? "100 %" : Invariant($"{Math.Min(percent, 99.9):0.0} %");
    }

    private static string Count(long number, string one, string many) =>
        Invariant($"{number} {(number == 1 ? one : many)}");

    private static string Number(double value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero)
            .ToString(CultureInfo.InvariantCulture);

    /// <summary>A position angle with one decimal, never 360.</summary>
    internal static string Turn(PositionAngle angle) =>
        Number(Math.Round(angle.Degrees, 1) % 360.0, 1) + "°";

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
