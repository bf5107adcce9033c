using Framing.Sky;

namespace Framing.Fits;

/// <summary>What a header says about the place of its picture on the sky.</summary>
/// <remarks>
/// A header without a word about it, and one whose solution cannot be used, are answers like any other:
/// <see cref="Coordinates"/> is null then and <see cref="WhyNone"/> says why.
/// </remarks>
public sealed record HeaderSolution
{
    /// <summary>The solution as the file's axes run, in ICRS; null when there is none that is read.</summary>
    public WorldCoordinates? Coordinates { get; init; }

    /// <summary>The same in the file's own <see cref="Frame"/>; there too where that frame is not carried to ICRS.</summary>
    public WorldCoordinates? AsWritten { get; init; }

    /// <summary>Why there is no solution, in one sentence; null when there is one.</summary>
    public string? WhyNone { get; init; }

    /// <summary>The projection's code as the file has it ("TAN", "SIN", ...); null when the header names none.</summary>
    public string? Projection { get; init; }

    /// <summary>The distortion the header carries.</summary>
    public DistortionKind Distortion { get; init; }

    /// <summary>True when the distortion's terms are part of <see cref="Coordinates"/>.</summary>
    public bool DistortionUsed { get; init; }

    /// <summary>The frame in which the file states positions; <see cref="Coordinates"/> are carried from it to ICRS.</summary>
    public FrameOfReference Frame { get; init; } = FrameOfReference.Icrs;

    /// <summary>What a person should know, one sentence each.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];
}
