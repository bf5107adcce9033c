namespace Framing.Nights;

/// <summary>What a battery is made of: it decides how much of it is left in the cold.</summary>
public enum BatteryChemistry
{
    /// <summary>Lithium iron phosphate; <c>LiFePO4</c> in a plan.</summary>
    LithiumIronPhosphate = 0,

    /// <summary>Lithium ion; <c>Li-ion</c> in a plan.</summary>
    LithiumIon = 1,

    /// <summary>Lead and acid; <c>lead-acid</c> in a plan.</summary>
    LeadAcid = 2,
}
