using Framing.Sky;

namespace Framing.Nights;

/// <summary>How far stars trail in the worst corner, the axis of the mount standing off in the worst direction.</summary>
/// <remarks>
/// Guided, the field turns about the guide star: r·e·ω·t / cos δ at the far corner, whatever the focal length. Unguided it
/// drifts by e·ω·t and turns about its middle by e·ω·cos δ·t at most, not both at once: the worst hour angle is taken. The
/// gears' own errors and the wind are not in it.
/// </remarks>
public sealed class StarTrail
{
    // Closer to a pole the first-order formula runs away.
    private const double LeastCosine = 0.01;

    private readonly TrailQuestion question;
    private readonly double millimetresPerErrorSecond;

    private StarTrail(TrailQuestion question)
    {
        this.question = question;
        var rig = question.Rig;
        var pixel = rig.Sensor.PixelMicrometres * rig.Binning / 1000.0;
        var diagonal = double.Hypot(rig.FrameWidthPx, rig.FrameHeightPx) * pixel;
        var cos = Math.Max(LeastCosine, Math.Cos(question.Declination.Radians));
        PixelMillimetres = pixel;
        CornerMillimetres = question.GuideStar is GuideStar.Corner ? diagonal : diagonal / 2.0;
        millimetresPerErrorSecond =
            PolarDrift.SkyTurn
            * (
                question.GuideStar is null
                    ? Unguided(rig.FocalLengthMillimetres, CornerMillimetres, cos)
                    : CornerMillimetres / cos
            );
    }

    /// <summary>Edge of a (binned) pixel in mm.</summary>
    public double PixelMillimetres { get; }

    /// <summary>From where the field turns to the far corner, mm on the sensor: the guide star, or the middle without one.</summary>
    public double CornerMillimetres { get; }

    /// <summary>True when a guider holds a star.</summary>
    public bool IsGuided => question.GuideStar is not null;

    /// <summary>The longest sub whose stars stay within the limit; null when the axis does not miss the pole.</summary>
    public TimeSpan? Longest
    {
        get
        {
            var rate = millimetresPerErrorSecond * question.PolarError.Radians;
            var seconds = question.LimitPx * PixelMillimetres / rate;
            return double.IsFinite(seconds) && seconds < TimeSpan.MaxValue.TotalSeconds / 2.0
                ? TimeSpan.FromSeconds(seconds)
                : null;
        }
    }

    /// <summary>Works out how stars trail.</summary>
    /// <param name="question">What it depends on.</param>
    /// <returns>The trail.</returns>
    public static StarTrail Of(TrailQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return new(question);
    }

    /// <summary>The length of a trail.</summary>
    /// <param name="sub">How long the shutter is open.</param>
    /// <returns>µm on the sensor.</returns>
    public double Micrometres(TimeSpan sub) =>
        millimetresPerErrorSecond * question.PolarError.Radians * sub.TotalSeconds * 1000.0;

    /// <summary>The length of a trail.</summary>
    /// <param name="sub">How long the shutter is open.</param>
    /// <returns>(Binned) pixels.</returns>
    public double Px(TimeSpan sub) => Micrometres(sub) / (PixelMillimetres * 1000.0);

    /// <summary>How far the axis may miss the pole for a sub of a wished length.</summary>
    /// <param name="sub">The wished sub, longer than nothing.</param>
    /// <returns>The error at which its stars trail by the limit, at most 90°.</returns>
    public Angle ErrorFor(TimeSpan sub) =>
        Angle.FromRadians(
            Math.Min(
                Math.PI / 2.0,
                question.LimitPx * PixelMillimetres / (millimetresPerErrorSecond * sub.TotalSeconds)
            )
        );

    /// <summary>How far a field creeps off when no guider holds it between subs.</summary>
    /// <param name="session">How long it is left.</param>
    /// <returns>At most this far; never more than twice the error.</returns>
    public Angle Creep(TimeSpan session) =>
        question.PolarError
        * (2.0 * Math.Sin(Math.Min(Math.PI, PolarDrift.SkyTurn * session.TotalSeconds) / 2.0));

    /// <summary>How far the field turns against north through a session.</summary>
    /// <param name="session">How long it is left.</param>
    /// <returns>At most this far.</returns>
    public Angle Turn(TimeSpan session) =>
        Creep(session) / Math.Max(LeastCosine, Math.Cos(question.Declination.Radians));

    // Largest of f·√(1-u²) + r·u for u = cos δ·cos(H-Hp), which goes from 0 to cos δ.
    private static double Unguided(double focal, double corner, double cos)
    {
        var u = Math.Min(cos, corner / double.Hypot(corner, focal));
        return (focal * Math.Sqrt(1.0 - (u * u))) + (corner * u);
    }
}
