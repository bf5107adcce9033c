using System.Globalization;
using System.Text;

namespace Framing.Workshop;

/// <summary>The panels of a plan that are ticked off, kept beside the plan file (<c>NAME.done</c>).</summary>
/// <remarks>
/// One number a line. The numbers are those of the plan as it was when they were ticked; a plan with another number of
/// panels starts afresh. A file that cannot be read counts as none: ticking again writes it anew.
/// </remarks>
public static class DonePanels
{
    /// <summary>What is added to the plan file's name.</summary>
    public const string Suffix = ".done";

    /// <summary>The panels that are ticked off.</summary>
    /// <param name="plan">The plan file.</param>
    /// <param name="panels">How many panels the plan has.</param>
    /// <returns>Their numbers, from 1, in order.</returns>
    public static IReadOnlyList<int> Read(string plan, int panels)
    {
        var path = plan + Suffix;
        if (
            !File.Exists(path)
            || new DiskPlanFiles().Read(path, PlanFiles.MostTomlBytes, out var text) is not null
        )
        {
            return [];
        }

        var lines = text.Split(
            '\n',
            StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
        );
        return lines is [var first, .. var rest] && Number(first) == panels
            ?
            [
                .. rest.Select(Number)
                    .Where(number => number >= 1 && number <= panels)
                    .Distinct()
                    .Order(),
            ]
            : [];
    }

    /// <summary>Ticks a panel off, or takes the tick back.</summary>
    /// <param name="plan">The plan file.</param>
    /// <param name="panels">How many panels the plan has.</param>
    /// <param name="number">The panel, from 1.</param>
    /// <param name="isDone">True to tick it off.</param>
    /// <returns>The panels that are ticked off now.</returns>
    /// <exception cref="InputException">There is no such panel, or the file cannot be written.</exception>
    public static IReadOnlyList<int> Tick(string plan, int panels, int number, bool isDone)
    {
        if (number < 1 || number > panels)
        {
            throw new InputException(
                FormattableString.Invariant($"There is no panel {number}; the plan has {panels}.")
            );
        }

        var done = Read(plan, panels).Where(known => known != number);
        IReadOnlyList<int> now = [.. (isDone ? done.Append(number) : done).Order()];
        var text = new StringBuilder();
        foreach (var line in now.Prepend(panels))
        {
            text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        }

        OutputFile.Write(plan + Suffix, Encoding.UTF8.GetBytes(text.ToString()));
        return now;
    }

    private static int Number(string line) =>
        int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : 0;
}
