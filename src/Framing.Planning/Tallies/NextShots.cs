namespace Framing.Planning;

/// <summary>What is still to be shot.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="Filter">The filter; empty where the plan names none.</param>
/// <param name="SubSeconds">The exposure of one sub.</param>
/// <param name="Subs">How many, those that will be thrown away included.</param>
/// <param name="MissingSeconds">The exposure that is missing.</param>
public sealed record NextShots(
    int Panel,
    string Filter,
    double SubSeconds,
    int Subs,
    double MissingSeconds
);
