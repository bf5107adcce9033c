using System.Globalization;
using System.Text;
using Framing.Planning;

namespace Framing.Export;

/// <summary>Says what a key turned out to do.</summary>
public static class KeyText
{
    /// <summary>Says one finding.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="keyAddsToTracking">True when a pressed key adds to the drive's motion.</param>
    /// <returns>Lines of at most about 100 characters, each ending in a line feed.</returns>
    public static string Write(KeyFinding finding, bool keyAddsToTracking)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var text = new StringBuilder();
        var went = CheckWords.Towards(finding.Went);
        var pressed = CheckWords.Towards(finding.Press.Towards);
        Lines.Wrap(
            text,
            string.Empty,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The key of {pressed} moved the telescope {went}: the axis turned by {CheckWords.Arcminutes(finding.Turned)} in {CheckWords.Seconds(finding.Press.Seconds)}, {finding.TimesSidereal:0.0#} times as fast as the sky{(keyAddsToTracking ? string.Empty : " by the key alone")}."
            )
        );
        Lines.Wrap(
            text,
            string.Empty,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Speed {finding.Speed.Label} promises {finding.Speed.Sidereal:0.##} times: it runs at {finding.RateFactor * 100.0:0} % of that, known to about {KeyTrial.Uncertainty(finding.Press) * 100.0:0.#} % by a hand on the key."
            )
        );
        if (finding.IsCrossed)
        {
            Lines.Wrap(
                text,
                "! ",
                $"The plan has the keys of this axis crossed: the key that it calls {pressed} moves the telescope {went}."
            );
        }

        if (finding.Backlash is { } play)
        {
            Lines.Wrap(
                text,
                string.Empty,
                $"The gear has {CheckWords.Arcminutes(play)} of play: the axis stood still while it was crossed."
            );
        }
        else if (finding.Went is MountDirection.North or MountDirection.South)
        {
            Lines.Wrap(
                text,
                string.Empty,
                finding.Went == finding.Learned.Declination.Finish
                    ? $"To learn the play of the gear, too, hold the key of {CheckWords.Towards(KeyHolds.Opposite(finding.Went))} next, and take one more frame."
                    : $"The play of the gear was taken to be {CheckWords.Arcminutes(finding.Learned.Declination.Backlash)}; to learn it, first hold the key of {CheckWords.Towards(KeyHolds.Opposite(finding.Went))} twice for the rate."
            );
        }

        if (finding.Aside.Arcminutes >= 1.0)
        {
            Lines.Wrap(
                text,
                string.Empty,
                $"Meanwhile the telescope went {CheckWords.Arcminutes(finding.Aside)} aside."
            );
        }

        return text.ToString();
    }
}
