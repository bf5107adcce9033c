using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>A mount with play in its gears, wrong rates and a drive, worked in small pieces of motion from its own equations.</summary>
/// <remarks>
/// Degrees throughout. Each axis is a motor that pushes the axis by the one or the other flank of its gear: the axis stays
/// where it is until the motor has crossed the play. The drive turns the motor of the first axis west with the sky.
/// </remarks>
internal sealed class SimulatedMount
{
    private const double Sidereal = 360.0 / 86164.0905;

    private double raDeg;
    private readonly double rateError;
    private readonly double backlashDeg;
    private readonly bool keyAddsToTracking;

    private double hourMotor;
    private double hourAxis;
    private double decMotor;
    private double decAxis;
    private double seconds;

    public SimulatedMount(
        double raDeg,
        double decDeg,
        double rateError,
        double backlashDeg,
        bool keyAddsToTracking
    )
    {
        this.raDeg = raDeg;
        this.rateError = rateError;
        this.backlashDeg = backlashDeg;
        this.keyAddsToTracking = keyAddsToTracking;

        // Hour angle grows westward. Both gears lie against the flank that pushes west and north.
        hourMotor = backlashDeg;
        decAxis = decDeg;
        decMotor = decDeg + backlashDeg;
    }

    public SkyDirection OfDate
    {
        get
        {
            // What the axis has turned west more than the sky has is right ascension lost.
            var ra = raDeg + (Sidereal * seconds) - hourAxis;
            return SkyDirection.FromDegrees(((ra % 360.0) + 360.0) % 360.0, decAxis);
        }
    }

    /// <summary>Sends it to a place, by its own motors: both gears lie against their usual flanks afterwards.</summary>
    public void Point(double toRaDeg, double toDecDeg)
    {
        raDeg += toRaDeg - (raDeg + (Sidereal * seconds) - hourAxis);
        hourMotor = hourAxis + backlashDeg;
        decAxis = toDecDeg;
        decMotor = toDecDeg + backlashDeg;
    }

    public void Wait(double forSeconds) => Turn(Sidereal, 0.0, forSeconds);

    public void Press(KeyHold hold)
    {
        var rate = hold.Speed.Sidereal * (1.0 + rateError) * Sidereal;
        var drive =
            hold.Towards is MountDirection.North or MountDirection.South || keyAddsToTracking
                ? Sidereal
                : 0.0;
        switch (hold.Towards)
        {
            case MountDirection.East:
                Turn(drive - rate, 0.0, hold.Seconds);
                break;
            case MountDirection.West:
                Turn(drive + rate, 0.0, hold.Seconds);
                break;
            case MountDirection.North:
                Turn(drive, rate, hold.Seconds);
                break;
            default:
                Turn(drive, -rate, hold.Seconds);
                break;
        }
    }

    private void Turn(double hourRate, double decRate, double forSeconds)
    {
        seconds += forSeconds;
        hourMotor += hourRate * forSeconds;
        hourAxis = Math.Clamp(hourAxis, hourMotor - backlashDeg, hourMotor);
        decMotor += decRate * forSeconds;
        decAxis = Math.Clamp(decAxis, decMotor - backlashDeg, decMotor);
    }
}
