using Framing.Sky;

namespace Framing.Nights;

/// <summary>One day's slow motions as Chebyshev polynomials; x runs from -1 to +1 through the day.</summary>
internal sealed class SiteDay
{
    /// <summary>
    /// Coefficients each. The fastest term of the Moon that matters has a period of 7 days: the ninth coefficient of a day is
    /// below 1e-9 of the amplitude.
    /// </summary>
    public const int Order = 8;

    private readonly OfDateFrame[] frames = new OfDateFrame[Order];
    private readonly Vector3D[] sun = new Vector3D[Order];
    private readonly Vector3D[] moon = new Vector3D[Order];
    private readonly double[] lit = new double[Order];
    private readonly double[] equinoxes = new double[Order];

    public SiteDay(int number, DateTime start, double length)
    {
        Number = number;
        for (var i = 0; i < Order; i++)
        {
            var utc = start.AddDays(0.5 * length * (Chebyshev.Node(i, Order) + 1.0));
            var frame = OfDateFrame.At(TerrestrialTime.FromUtc(utc));
            var place = MoonPlace.At(frame);
            frames[i] = frame;
            sun[i] = frame.Sun.Vector;
            moon[i] = place.Direction.Vector * place.DistanceKilometres;
            lit[i] = place.IlluminatedFraction;
            equinoxes[i] = SiderealTime.EquationOfEquinoxes(frame).Radians;
        }

        Chebyshev.Fit(sun);
        Chebyshev.Fit(moon);
        Chebyshev.Fit(lit);
        Chebyshev.Fit(equinoxes);
    }

    /// <summary>The day's place in the row, from 0.</summary>
    public int Number { get; }

    public Vector3D Sun(double x) => Chebyshev.At(sun, x);

    public Vector3D Moon(double x) => Chebyshev.At(moon, x);

    public double Lit(double x) => Math.Clamp(Chebyshev.At(lit, x), 0.0, 1.0);

    public double Equinoxes(double x) => Chebyshev.At(equinoxes, x);

    /// <summary>A direction of date through the day.</summary>
    public Vector3D[] Star(SkyDirection icrs)
    {
        var path = Array.ConvertAll(frames, frame => frame.ToOfDate(icrs).Vector);
        Chebyshev.Fit(path);
        return path;
    }
}
