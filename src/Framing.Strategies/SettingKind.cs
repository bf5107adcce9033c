namespace Framing.Strategies;

/// <summary>What a strategy's setting holds.</summary>
public enum SettingKind
{
    /// <summary>A finite number.</summary>
    Number = 0,

    /// <summary>A text.</summary>
    Text = 1,

    /// <summary>True or false.</summary>
    Flag = 2,
}
