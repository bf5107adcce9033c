using System.Globalization;

namespace Framing.Planning;

/// <summary>Tells frames that spoil a stack, by themselves and against the others of their panel, filter and length.</summary>
internal static class FrameJudge
{
    /// <summary>Stars longer than this against their width are trails (common practice).</summary>
    private const double MostElongation = 1.5;

    /// <summary>With fewer frames there is no norm to hold one against.</summary>
    private const int LeastForNorm = 4;

    /// <summary>Fewer stars than this part of the norm: cloud, or dew.</summary>
    private const double LeastStars = 0.6;

    /// <summary>A background of more than this many times the norm: cloud lit from below, twilight, the Moon, a lamp.</summary>
    private const double MostBackground = 1.6;

    /// <summary>Why a frame is left out whatever the others are like; null when nothing speaks against it.</summary>
    public static string? Alone(ShotFrame frame) =>
        frame.Fault
        ?? (
            frame.Elongation is { } elongation && elongation > MostElongation
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"trailed: its stars are {elongation:0.0} times as long as wide"
                )
                : null
        );

    /// <summary>Why frames are left out against the others of their kind.</summary>
    /// <param name="group">Frames of one panel, one filter and one length, none left out by itself.</param>
    /// <returns>The reasons, by the frames' keys.</returns>
    public static Dictionary<string, string> Together(IReadOnlyList<ShotFrame> group)
    {
        var reasons = new Dictionary<string, string>(StringComparer.Ordinal);
        if (group.Count < LeastForNorm)
        {
            return reasons;
        }

        // Cloud takes stars away and never adds any: the norm is what the better frames show.
        var stars = At(group.Select(frame => (double)frame.Stars), 0.75);
        var background = At(group.Select(frame => frame.Background), 0.5);
        foreach (var frame in group)
        {
            if (frame.Stars < stars * LeastStars)
            {
                reasons[frame.Key] = string.Create(
                    CultureInfo.InvariantCulture,
                    $"cloud: it shows {frame.Stars} stars where the panel's better frames show {stars:0}{(background > 0.0 ? string.Create(CultureInfo.InvariantCulture, $", at {frame.Background / background:0.0} times their background") : string.Empty)}"
                );
            }
            else if (background > 0.0 && frame.Background > background * MostBackground)
            {
                reasons[frame.Key] = string.Create(
                    CultureInfo.InvariantCulture,
                    $"bright sky: its background is {frame.Background / background:0.0} times the panel's norm (cloud, twilight, the Moon or a lamp)"
                );
            }
        }

        return reasons;
    }

    private static double At(IEnumerable<double> values, double part)
    {
        double[] sorted = [.. values.Order()];
        return sorted[(int)Math.Round(part * (sorted.Length - 1), MidpointRounding.AwayFromZero)];
    }
}
