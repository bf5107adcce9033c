using System.Globalization;
using System.Text;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>The panels in the order of shooting, with what the hand control needs, and what to do with the camera between them.</summary>
internal static class PanelLines
{
    /// <summary>A turn smaller than this is shown as none: a twentieth of a degree.</summary>
    private const double NoTurn = 0.05;

    public static void Write(StringBuilder text, FramedPlan plan)
    {
        var request = plan.Request;
        var turns = request.TurnCameraAtEachPanel && plan.Panels.Count > 1;
        var raWidth = Math.Max(15, plan.Panels.Max(panel => panel.EntryRa.Length));
        var decWidth = Math.Max(11, plan.Panels.Max(panel => panel.EntryDec.Length));
        text.Append("Panel   ")
            .Append("Right ascension".PadRight(raWidth + 2))
            .Append("Declination".PadRight(decWidth + 2))
            .Append("Camera angle")
            .Append(turns ? "  Turn from the panel before\n" : "\n");
        PlannedPanel? before = null;
        foreach (var panel in plan.PanelsToShoot)
        {
            text.Append(Invariant($"{panel.Number, 5}   "))
                .Append(panel.EntryRa.PadLeft(raWidth))
                .Append("  ")
                .Append(panel.EntryDec.PadLeft(decWidth))
                .Append("  ")
                .Append(Invariant($"{SummaryText.Turn(panel.PositionAngle), 12}"))
                .Append(turns && before is not null ? "  " + Turn(plan, before, panel) : "")
                .Append('\n');
            before = panel;
        }

        Lines.Wrap(
            text,
            string.Empty,
            request.GotoFrame == GotoFrame.OfDate
                ? $"Type these numbers: they are of date, {Date(request)}, as the plan's mount expects. panels.csv holds J2000 beside them."
                : "Type these numbers: they are J2000, as the plan's mount expects. panels.csv holds those of date beside them."
        );
        if (plan.Panels.Count > 2 && plan.Route is { } route)
        {
            Lines.Wrap(text, string.Empty, Order(route));
        }

        if (plan.Turns is { } between)
        {
            Lines.Wrap(text, string.Empty, Camera(between, request.TurnCameraAtEachPanel));
        }
    }

    private static string Order(ShootingRoute route) =>
        route.PastAndBack switch
        {
            0 => "In this order every move ends from the mount's finish side by itself.",
            1 =>
                "In this order moves are short; one goes past its panel and comes back, to end from the mount's finish side.",
            _ => Invariant(
                $"In this order moves are short; {route.PastAndBack} of {route.Order.Count - 1} go past their panel and come back, to end from the mount's finish side."
            ),
        };

    /// <summary>What turning the camera at each panel would gain or does gain.</summary>
    private static string Camera(PanelTurns turns, bool turned)
    {
        var largest = turns.Largest.Degrees;
        var stays = "The camera stays as it is from panel to panel";
        if (largest < NoTurn)
        {
            return turned ? $"{stays}: the grid needs no turn here." : $"{stays}, along the grid.";
        }

        var (alone, along) = (turns.OverlapLeftAlone.Arcminutes, turns.OverlapTurned.Arcminutes);
        var pair = Invariant($"panels {turns.MostLost.First} and {turns.MostLost.Second}");
        if (!turned)
        {
            return turns.IsWorthIt
                    ? Invariant(
                        $"{stays}. Turned to the grid at each one, by up to {largest:0.0}°, {pair} would share {along:0.#}′ {Instead(alone)} (turn_camera_at_each_panel = true)."
                    )
                : turns.GainsOverlap
                    ? Invariant(
                        $"{stays}. Turning it to the grid at each one, by up to {largest:0.0}°, is not worth it: {pair} would share {along:0.#}′ {Instead(alone)}, but the mosaic closes as it is."
                    )
                : Invariant(
                    $"{stays}. Turning it to the grid at each one, by up to {largest:0.0}°, is not worth it: it would gain {Math.Max(0.0, along - alone):0.0}′ of overlap."
                );
        }

        return turns.IsWorthIt
                ? Invariant(
                    $"Turn the camera at each panel, as seen from behind it: {pair} then share {along:0.#}′ {Instead(alone)}."
                )
            : turns.GainsOverlap
                ? Invariant(
                    $"Turning the camera, by up to {largest:0.0}° from where it would stand, is not worth it here: {pair} share {along:0.#}′ {Instead(alone)}, but the mosaic would close with turn_camera_at_each_panel = false as well."
                )
            : Invariant(
                $"Turning the camera, by up to {largest:0.0}° from where it would stand, is not worth it here: it gains {Math.Max(0.0, along - alone):0.0}′ of overlap (turn_camera_at_each_panel = false leaves it alone)."
            );
    }

    private static string Instead(double alone) =>
        alone >= 0.0 ? Invariant($"instead of {alone:0.#}′") : "instead of parting";

    private static string Turn(FramedPlan plan, PlannedPanel from, PlannedPanel to)
    {
        var turn =
            from.PositionAngle.FrameTurnTo(to.PositionAngle).Degrees
            * (plan.Request.Rig.Mirrored ? -1.0 : 1.0);
        return Math.Abs(turn) < NoTurn
            ? "none"
            : Invariant(
                $"{Math.Abs(turn):0.0}° {(turn > 0.0 ? "counter-clockwise" : "clockwise")}"
            );
    }

    private static string Date(FramingRequest request) =>
        request.Evening is { } evening
            ? "for the night of " + evening.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)
            : request.At.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
