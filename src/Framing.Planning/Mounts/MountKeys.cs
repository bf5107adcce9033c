namespace Framing.Planning;

/// <summary>What is printed on the keys that move the telescope.</summary>
/// <param name="East">The key that moves the telescope east.</param>
/// <param name="West">The key that moves the telescope west.</param>
/// <param name="North">The key that moves the telescope north.</param>
/// <param name="South">The key that moves the telescope south.</param>
public sealed record MountKeys(string East, string West, string North, string South);
