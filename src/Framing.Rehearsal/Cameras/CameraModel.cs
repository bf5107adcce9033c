using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>A camera as the frame maker plays it: sensor, what part of it is kept, how light becomes numbers.</summary>
/// <remarks>The usual values are those of a small cooled camera of today (from memory, rounded).</remarks>
public sealed record CameraModel
{
    /// <summary>The sensor, unbinned.</summary>
    public required Sensor Sensor { get; init; }

    /// <summary>Pixels joined along each axis, 1 to 16; numbers are means over the joined pixels.</summary>
    public int Binning { get; init; } = 1;

    /// <summary>The part of the sensor that is kept, in binned pixels of the displayed picture; null for all of it.</summary>
    public SensorWindow? Window { get; init; }

    /// <summary>The number that no light gives.</summary>
    public double BiasLevel { get; init; } = 500.0;

    /// <summary>Electrons for one step of the numbers, more than 0.</summary>
    public double ElectronsPerStep { get; init; } = 0.8;

    /// <summary>Noise of reading one unbinned pixel, electrons, 1 sigma.</summary>
    public double ReadNoiseElectrons { get; init; } = 1.8;

    /// <summary>Electrons that an unbinned pixel holds at most.</summary>
    public double FullWellElectrons { get; init; } = 50_000.0;

    /// <summary>Share of the light that becomes electrons, 0 to 1.</summary>
    public double QuantumEfficiency { get; init; } = 0.6;

    /// <summary>Electrons a second of darkness in an unbinned pixel.</summary>
    public double DarkCurrent { get; init; } = 0.005;

    /// <summary>The share of pixels that are hot.</summary>
    public double HotShare { get; init; } = 3e-5;

    /// <summary>The colours of the first two pixels of the file's first two rows, such as RGGB; null for a grey sensor.</summary>
    /// <remarks>A colour filter needs binning 1.</remarks>
    public string? ColourPattern { get; init; }

    /// <summary>True where the file stores the top row first (ROWORDER = TOP-DOWN).</summary>
    public bool RowsTopDown { get; init; }

    /// <summary>What makes this camera this one: where its hot pixels lie.</summary>
    public ulong SerialNumber { get; init; } = 1;

    /// <summary>Columns of the frame as written.</summary>
    public int FrameWidthPx => Window?.Columns ?? (Sensor.WidthPx / Binning);

    /// <summary>Rows of the frame as written.</summary>
    public int FrameHeightPx => Window?.Rows ?? (Sensor.HeightPx / Binning);

    /// <summary>Refuses what no camera is.</summary>
    /// <exception cref="InvalidOperationException">Window, binning or colour pattern do not fit the sensor.</exception>
    internal void Check()
    {
        if (Binning is < 1 or > 16 || Sensor.WidthPx < Binning || Sensor.HeightPx < Binning)
        {
            throw new InvalidOperationException(
                FormattableString.Invariant($"Binning {Binning} does not fit the sensor.")
            );
        }

        if (
            Window is { } window
            && (
                window.Left < 0
                || window.Bottom < 0
                || window.Columns < 1
                || window.Rows < 1
                || window.Left + window.Columns > Sensor.WidthPx / Binning
                || window.Bottom + window.Rows > Sensor.HeightPx / Binning
            )
        )
        {
            throw new InvalidOperationException(
                FormattableString.Invariant(
                    $"The window {window} does not lie on a sensor of {Sensor.WidthPx / Binning} x {Sensor.HeightPx / Binning} pixels."
                )
            );
        }

        if (
            ColourPattern is { } pattern
            && (
                Binning != 1
                || pattern.Length != 4
                || pattern.Any(c => c is not ('R' or 'G' or 'B'))
            )
        )
        {
            throw new InvalidOperationException(
                $"The colour pattern {pattern} is not four of R, G and B on an unbinned sensor."
            );
        }
    }
}
