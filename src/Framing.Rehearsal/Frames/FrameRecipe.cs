using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>Everything a made frame depends on. The same recipe gives the same bytes.</summary>
public sealed record FrameRecipe
{
    /// <summary>What kind of frame.</summary>
    public FrameKind Kind { get; init; } = FrameKind.Light;

    /// <summary>Where the middle of the whole sensor looks, and how the displayed picture is turned.</summary>
    public required CameraPose Pose { get; init; }

    /// <summary>The camera.</summary>
    public required CameraModel Camera { get; init; }

    /// <summary>The lens.</summary>
    public required LensModel Lens { get; init; }

    /// <summary>The sky.</summary>
    public SkyModel Sky { get; init; } = new();

    /// <summary>The exposure.</summary>
    public required ExposureModel Exposure { get; init; }

    /// <summary>What chance hangs on: noise, satellites, clouds.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The name of what is photographed, for the header; null for none.</summary>
    public string? ObjectName { get; init; }

    /// <summary>Sky per unbinned pixel in the middle.</summary>
    public Angle Scale =>
        Angle.FromRadians(Camera.Sensor.PixelMicrometres / 1000.0 / Lens.FocalLengthMillimetres);
}
