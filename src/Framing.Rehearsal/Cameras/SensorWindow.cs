namespace Framing.Rehearsal;

/// <summary>The part of a sensor that is kept, in binned pixels of the picture as displayed.</summary>
/// <param name="Left">Columns left away at the left.</param>
/// <param name="Bottom">Rows left away at the bottom.</param>
/// <param name="Columns">Columns kept.</param>
/// <param name="Rows">Rows kept.</param>
public readonly record struct SensorWindow(int Left, int Bottom, int Columns, int Rows);
