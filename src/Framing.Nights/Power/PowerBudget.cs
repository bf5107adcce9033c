namespace Framing.Nights;

/// <summary>Whether a battery lasts.</summary>
/// <param name="HoursNeeded">How long it has to.</param>
/// <param name="AverageWatts">What the loads draw on average.</param>
/// <param name="UsableWattHours">What they may draw in all: cold, depth, converter and spare taken off.</param>
public sealed record PowerBudget(double HoursNeeded, double AverageWatts, double UsableWattHours)
{
    /// <summary>What the loads need in all, Wh.</summary>
    public double NeededWattHours => AverageWatts * HoursNeeded;

    /// <summary>How long it lasts; null when nothing draws on it.</summary>
    public double? HoursAvailable => AverageWatts > 0.0 ? UsableWattHours / AverageWatts : null;

    /// <summary>How much longer than needed it lasts; negative by how much it falls short; null when nothing draws on it.</summary>
    public double? HoursLeft => HoursAvailable - HoursNeeded;

    /// <summary>True when it lasts.</summary>
    public bool IsEnough => HoursLeft is null or >= 0.0;

    /// <summary>Works out a budget.</summary>
    /// <param name="battery">The battery.</param>
    /// <param name="loads">What hangs on it.</param>
    /// <param name="time">How long it has to last.</param>
    /// <param name="celsius">How cold the battery is, °C.</param>
    /// <returns>The budget.</returns>
    public static PowerBudget Of(
        Battery battery,
        IReadOnlyList<PowerLoad> loads,
        TimeSpan time,
        double celsius
    )
    {
        ArgumentNullException.ThrowIfNull(battery);
        ArgumentNullException.ThrowIfNull(loads);
        var watts = loads.Sum(load => load.Watts * load.Duty);
        return new(time.TotalHours, watts, battery.UsableWattHours(celsius, watts));
    }
}
