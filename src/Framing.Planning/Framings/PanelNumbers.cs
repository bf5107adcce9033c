namespace Framing.Planning;

/// <summary>Two panels by their numbers in the plan.</summary>
/// <param name="First">The one to the left or above.</param>
/// <param name="Second">The other one.</param>
public readonly record struct PanelNumbers(int First, int Second);
