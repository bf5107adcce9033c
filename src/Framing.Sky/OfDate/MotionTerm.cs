namespace Framing.Sky;

/// <summary>
/// One term of a motion: on one axis, amplitude × t^power × cos(phase + rate × t), with t in Julian years from J2000.
/// </summary>
/// <param name="Axis">0, 1 or 2 for x, y or z of the ecliptic frame of the theory.</param>
/// <param name="Power">Power of time: 0, 1 or 2.</param>
/// <param name="Amplitude">Amplitude, au per Julian year to the power.</param>
/// <param name="Phase">Phase at J2000, radians.</param>
/// <param name="Rate">Rate, radians per Julian year.</param>
internal readonly record struct MotionTerm(
    int Axis,
    int Power,
    double Amplitude,
    double Phase,
    double Rate
);
