namespace Framing.Rehearsal;

/// <summary>How a frame is exposed.</summary>
public sealed record ExposureModel
{
    /// <summary>Start, UTC.</summary>
    public required DateTime Start { get; init; }

    /// <summary>Seconds, more than 0.</summary>
    public double Seconds { get; init; } = 10.0;

    /// <summary>Width of the filter, nm: about 300 for all visible light, 3 to 12 for a line of emission.</summary>
    public double BandwidthNanometres { get; init; } = 300.0;

    /// <summary>The filter's name.</summary>
    public string Filter { get; init; } = "L";

    /// <summary>How far stars run along the file's x axis while it is exposed, unbinned pixels.</summary>
    public double TrailXPx { get; init; }

    /// <summary>The same along the file's y axis.</summary>
    public double TrailYPx { get; init; }

    /// <summary>The middle of the exposure, UTC.</summary>
    public DateTime Middle => Start.AddSeconds(Seconds / 2.0);
}
