namespace Framing.Nights;

/// <summary>A battery and how much of it may be used.</summary>
/// <param name="WattHours">What it holds when full and warm, Wh, more than 0.</param>
/// <param name="Chemistry">What it is made of.</param>
/// <param name="UsableFraction">The share that may be drawn without harming it, above 0, at most 1.</param>
/// <param name="SpareFraction">The share of the usable part that is kept for packing up, 0 to less than 1.</param>
/// <param name="ConverterEfficiency">What of its power arrives at the loads, above 0, at most 1.</param>
public sealed record Battery(
    double WattHours,
    BatteryChemistry Chemistry,
    double UsableFraction,
    double SpareFraction,
    double ConverterEfficiency
)
{
    /// <summary>Lead-acid batteries are rated for a drain of this many hours.</summary>
    private const double RatedHours = 20.0;

    // Between the flooded (1.2 to 1.3) and the sealed kind (1.05 to 1.15); common practice, from memory.
    private const double PeukertExponent = 1.15;

    /// <summary>The share that may be drawn of a kind of battery: common practice, from memory.</summary>
    /// <param name="chemistry">What it is made of.</param>
    /// <returns>0.8 for lithium, 0.5 for lead and acid.</returns>
    public static double UsualUsable(BatteryChemistry chemistry) =>
        chemistry == BatteryChemistry.LeadAcid ? 0.5 : 0.8;

    /// <summary>What the cold leaves of a kind of battery: common practice, from memory; look at the maker's sheet.</summary>
    /// <param name="chemistry">What it is made of.</param>
    /// <param name="celsius">How cold the battery itself is, °C.</param>
    /// <returns>A share: 1 from 20 °C on, and below by straight lines through 0 and -10 °C; at least 0.3.</returns>
    public static double ColdFactor(BatteryChemistry chemistry, double celsius)
    {
        var (atZero, atTenBelow) = chemistry switch
        {
            BatteryChemistry.LithiumIronPhosphate => (0.90, 0.80),
            BatteryChemistry.LithiumIon => (0.90, 0.75),
            _ => (0.80, 0.65),
        };
        return celsius switch
        {
            >= 20.0 => 1.0,
            >= 0.0 => atZero + ((1.0 - atZero) * (celsius / 20.0)),
            _ => Math.Max(0.3, atZero + ((atZero - atTenBelow) * (celsius / 10.0))),
        };
    }

    /// <summary>How long a battery lasts at a steady current (Peukert 1897): t = H (C / (I·H))^k.</summary>
    /// <param name="ampereHours">Its rated capacity C, Ah.</param>
    /// <param name="ratedHours">The time H of the rating, h.</param>
    /// <param name="amperes">The current I, A.</param>
    /// <param name="exponent">The exponent k: 1 for an ideal battery.</param>
    /// <returns>Hours.</returns>
    public static double PeukertHours(
        double ampereHours,
        double ratedHours,
        double amperes,
        double exponent
    ) => ratedHours * Math.Pow(ampereHours / (amperes * ratedHours), exponent);

    /// <summary>What the loads may draw.</summary>
    /// <param name="celsius">How cold the battery is, °C.</param>
    /// <param name="drawnWatts">The steady load, W; a lead-acid battery gives less to a heavy one.</param>
    /// <returns>Wh at the loads, spare taken off.</returns>
    public double UsableWattHours(double celsius, double drawnWatts)
    {
        var usable =
            WattHours
            * UsableFraction
            * ColdFactor(Chemistry, celsius)
            * (1.0 - SpareFraction)
            * ConverterEfficiency;
        var drain = drawnWatts / ConverterEfficiency;
        return Chemistry == BatteryChemistry.LeadAcid && drain * RatedHours > WattHours
            ? usable
                * PeukertHours(WattHours, RatedHours, drain, PeukertExponent)
                / (WattHours / drain)
            : usable;
    }
}
