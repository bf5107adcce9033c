using System.Globalization;
using System.Text;
using Framing.Planning;

namespace Framing.Export;

/// <summary>Says what to do at the mount, for tired eyes in the dark: one step, in the order that works.</summary>
public static class CheckText
{
    private const string Indent = "  ";

    /// <summary>Says one check.</summary>
    /// <param name="frame">The frame with its check.</param>
    /// <returns>Lines of at most about 100 characters, each ending in a line feed.</returns>
    public static string Write(CheckedFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var text = new StringBuilder();
        if (frame.Check is not { } check)
        {
            Lines.Wrap(text, string.Empty, $"{frame.File}: {frame.Reason}.");
            Notes(text, frame.Notes);
            return text.ToString();
        }

        Lines.Wrap(
            text,
            string.Empty,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{frame.File}, panel {check.Panel.Number}: {CheckWords.Arcminutes(check.TotalNeeded)} off, and the camera {CheckWords.Degrees(check.TurnCamera)}; allowed are {CheckWords.Arcminutes(check.Tolerance.Place)} and {CheckWords.Degrees(check.Tolerance.Turn)}. It shows {Percent(check.CoveredFraction)} of the panel."
            )
        );
        text.Append('\n');
        switch (check)
        {
            case { Verdict: CheckVerdict.Within }:
                text.Append(Indent).Append("Good: start.\n");
                break;
            case { Verdict: CheckVerdict.WrongField }:
                Lines.Wrap(
                    text,
                    Indent,
                    $"This is another part of the sky: {CheckWords.Arcminutes(check.TotalNeeded)} from the panel."
                );
                Retype(text, check, "Type");
                NewFrame(text);
                break;
            case { Steps: [CheckStep.Turn, ..] }:
                Turn(text, check);
                break;
            case { Steps: [CheckStep.Retype, ..] }:
                Retype(text, check, "Type");
                Keys(text, check, "Or hold");
                NewFrame(text);
                break;
            default:
                Keys(text, check, "Hold");
                Retype(text, check, "Or type instead");
                NewFrame(text);
                break;
        }

        Notes(text, [.. check.Warnings, .. frame.Notes]);
        return text.ToString();
    }

    private static void Turn(StringBuilder text, FrameCheck check)
    {
        var way = check.TurnCamera.Radians > 0.0 ? "counter-clockwise" : "clockwise";
        var stars = check.TurnCamera.Radians > 0.0 ? "clockwise" : "counter-clockwise";
        Lines.Wrap(
            text,
            Indent,
            $"Turn the camera {CheckWords.Degrees(check.TurnCamera)} {way}, seen from behind the camera (the stars in the picture turn {stars}), then take a new frame."
        );
        if (check.Dial is { } dial)
        {
            Lines.Wrap(text, Indent, $"The dial then reads {CheckWords.Degrees(dial)}.");
        }

        Lines.Wrap(
            text,
            Indent,
            "After the turn: focus again, take new flats, and calibrate guiding again if the guide camera turned, too."
        );
    }

    private static void Keys(StringBuilder text, FrameCheck check, string first)
    {
        for (var i = 0; i < check.Moves.Count; i++)
        {
            var hold = check.Moves[i];
            var towards = CheckWords.Towards(hold.Towards);
            var key = hold.Key == towards ? towards : $"{hold.Key} ({towards})";
            Lines.Wrap(
                text,
                Indent,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(i == 0 ? first : "Then hold")} {key} at speed {hold.Speed.Label} for {CheckWords.Seconds(hold.Seconds)}: the stars run {CheckWords.Way(check.MotionOfMoves[i])}."
                )
            );
        }

        if (check.Moves.Count > 0)
        {
            Lines.Wrap(
                text,
                Indent,
                $"In the end the stars stand further {CheckWords.Motion(check.StarsMustMove)}."
            );
        }
    }

    private static void Retype(StringBuilder text, FrameCheck check, string first) =>
        Lines.Wrap(text, Indent, $"{first}: {check.RetypeRa}, {check.RetypeDec}");

    private static void NewFrame(StringBuilder text) =>
        text.Append(Indent).Append("Then take a new frame.\n");

    private static void Notes(StringBuilder text, IReadOnlyList<string> notes)
    {
        foreach (var note in notes)
        {
            text.Append('\n');
            Lines.Wrap(text, "! ", note);
        }
    }

    private static string Percent(double fraction) =>
        fraction >= 0.9995 ? "all"
        : fraction <= 0.0 ? "nothing"
        : string.Create(CultureInfo.InvariantCulture, $"{fraction * 100.0:0.0} %");
}
