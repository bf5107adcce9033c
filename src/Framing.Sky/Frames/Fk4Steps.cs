namespace Framing.Sky;

/// <summary>The steps between FK4 of an equinox and ICRS.</summary>
internal sealed class Fk4Steps
{
    /// <summary>Years in which a motion of one second of arc a century makes one radian.</summary>
    private const double YearsPerRadian = 100.0 * 60.0 * 60.0 * 360.0 / (2.0 * Math.PI);

    /// <summary>How the elliptic terms move against fixed axes, in seconds of arc a century. Numbers as in ERFA 2.0.0, fk45z.</summary>
    private static readonly Vector3D EllipticDrift = new(1.245e-3, -1.580e-3, -0.659e-3);

    private readonly Rotation toB1950;
    private readonly Vector3D elliptic;

    // Rows of the matrix from FK4 without elliptic terms, B1950, to FK5, J2000. Almost a rotation: it spins FK4 as well.
    private readonly Rotation toJ2000;

    public Fk4Steps(double equinox, double epoch, bool withEllipticTerms)
    {
        toB1950 = OlderPrecession.NewcombToB1950(equinox);
        elliptic = withEllipticTerms
            ? Elliptic(equinox) + (EllipticDrift * ((epoch - equinox) / YearsPerRadian))
            : default;
        toJ2000 = Murray(epoch);
    }

    public SkyDirection ToIcrs(SkyDirection direction)
    {
        var v = direction.Vector;
        v = v - elliptic + (v * v.Dot(elliptic));
        return SkyDirection.FromVector(Fk5Turn.Inverse.Undo(toJ2000.Apply(toB1950.Apply(v))));
    }

    public SkyDirection FromIcrs(SkyDirection direction)
    {
        // The way there is a rotation but for a few parts in a million, and so is each step left over.
        var wanted = direction.Vector;
        var found = SkyDirection.FromVector(Back(wanted));
        for (var i = 0; i < 4; i++)
        {
            found = SkyDirection.FromVector(found.Vector + Back(wanted - ToIcrs(found).Vector));
        }

        return found;
    }

    private Vector3D Back(Vector3D v) => toB1950.Undo(toJ2000.Undo(Fk5Turn.Inverse.Apply(v)));

    /// <summary>Murray's matrix, and FK4's spin from 2000 back to the epoch. Numbers as in ERFA 2.0.0, fk45z.</summary>
    private static Rotation Murray(double epoch)
    {
        // Besselian to Julian year.
        var julian = 2000.0 + (((epoch - 1900.0) * 365.242198781) + 15019.81352 - 51544.5) / 365.25;
        var years = (julian - 2000.0) / YearsPerRadian;
        return new(
            new(
                0.9999256782 + (-0.000551 * years),
                -0.0111820611 + (-0.238565 * years),
                -0.0048579477 + (0.435739 * years)
            ),
            new(
                0.0111820610 + (0.238514 * years),
                0.9999374784 + (-0.002667 * years),
                -0.0000271765 + (-0.008541 * years)
            ),
            new(
                0.0048579479 + (-0.435623 * years),
                -0.0000271474 + (0.012254 * years),
                0.9999881997 + (0.002117 * years)
            )
        );
    }

    /// <summary>The elliptic part of aberration, by Newcomb's elements of the Sun.</summary>
    private static Vector3D Elliptic(double equinox)
    {
        const double aberration = 20.49552;
        var t = (equinox - 1950.0) * 1.00002135903e-2;
        var eccentricity = 0.01673011 - ((0.00004193 + (0.000000126 * t)) * t);
        var obliquity = Angle
            .FromArcseconds(84404.836 - ((46.8495 + ((0.00319 - (0.00181 * t)) * t)) * t))
            .Radians;
        var perigee = Angle
            .FromArcseconds(1015489.951 + ((6190.67 + ((1.65 + (0.012 * t)) * t)) * t))
            .Radians;
        var size = eccentricity * Angle.FromArcseconds(aberration).Radians;
        return new(
            size * Math.Sin(perigee),
            -size * Math.Cos(perigee) * Math.Cos(obliquity),
            -size * Math.Cos(perigee) * Math.Sin(obliquity)
        );
    }
}
