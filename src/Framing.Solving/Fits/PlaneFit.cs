using Framing.Sky;

namespace Framing.Solving;

/// <summary>One least-squares fit of a frame to given stars, the tangent point at the middle of the frame.</summary>
internal sealed class PlaneFit
{
    private const int MostSteps = 20;
    private const double DegreesPerRadian = 180.0 / Math.PI;

    // Far below what a star's place can tell: a thousandth of an arcsecond is 2.8e-7 degrees.
    private const double StillDegrees = 1e-11;

    private readonly FitModel model;
    private readonly int width;
    private readonly int height;
    private readonly double unit;
    private readonly TangentPlane plane;
    private readonly PixelMatrix matrix;
    private readonly SipDistortion? distortion;
    private readonly double centreVariance;
    private readonly double turnVariance;
    private readonly int unknowns;

    private PlaneFit(
        FitModel model,
        int width,
        int height,
        double unit,
        TangentPlane plane,
        PolynomialFit fit
    )
    {
        this.model = model;
        this.width = width;
        this.height = height;
        this.unit = unit;
        this.plane = plane;
        matrix = fit.Matrix;
        distortion = fit.Distortion;
        centreVariance = fit.CentreVariance;
        turnVariance = fit.TurnVariance;
        unknowns = fit.Unknowns;
    }

    public static int OrderOf(FitModel model) =>
        model switch
        {
            FitModel.Linear => 1,
            FitModel.Radial => 3,
            FitModel.Order2 => 2,
            FitModel.Order3 => 3,
            FitModel.Order4 => 4,
            _ => 5,
        };

    /// <summary>How many coefficients of a distortion an axis has at an order of 1 or more: all with 2 ≤ p + q ≤ order.</summary>
    public static int TermsPerAxisOf(int order) => ((order + 1) * (order + 2) / 2) - 3;

    public static int UnknownsOf(FitModel model) =>
        model == FitModel.Radial ? 7 : 6 + (2 * TermsPerAxisOf(OrderOf(model)));

    public static PlaneFit? Of(
        IReadOnlyList<StarMatch> matches,
        int[] used,
        int width,
        int height,
        FitModel model
    )
    {
        var half = 0.5 * double.Hypot(width, height);
        var sum = default(Vector3D);
        foreach (var star in used)
        {
            sum += matches[star].Direction.Vector;
        }

        if (sum.Length < 1e-6)
        {
            return null;
        }

        var tangent = new TangentPlane(SkyDirection.FromVector(sum));
        var points = new FitPoint[used.Length];
        PolynomialFit? fit = null;
        for (var step = 0; step < MostSteps; step++)
        {
            for (var i = 0; i < used.Length; i++)
            {
                var match = matches[used[i]];
                if (!tangent.TryProject(match.Direction, out var place))
                {
                    return null;
                }

                points[i] = new(
                    (match.Position.X - (0.5 * (width + 1))) / half,
                    (match.Position.Y - (0.5 * (height + 1))) / half,
                    place.Xi * DegreesPerRadian,
                    place.Eta * DegreesPerRadian
                );
            }

            fit = PolynomialFit.Of(points, half, model, fit?.Matrix);
            if (fit is null || !fit.Matrix.IsUsable)
            {
                return null;
            }

            if (
                double.Hypot(fit.Xi, fit.Eta) < StillDegrees
                && (step > 2 || model != FitModel.Radial)
            )
            {
                break;
            }

            tangent = new TangentPlane(
                tangent.Unproject(new(fit.Xi / DegreesPerRadian, fit.Eta / DegreesPerRadian))
            );
        }

        return new(model, width, height, half, tangent, fit!);
    }

    /// <summary>How far each star lies from where the fit puts it, in pixels; infinity behind the plane.</summary>
    public double[] Residuals(IReadOnlyList<StarMatch> matches)
    {
        var det = matrix.Determinant;
        var radii = new double[matches.Count];
        for (var i = 0; i < radii.Length; i++)
        {
            radii[i] = double.PositiveInfinity;
            if (!plane.TryProject(matches[i].Direction, out var place))
            {
                continue;
            }

            var u = matches[i].Position.X - (0.5 * (width + 1));
            var v = matches[i].Position.Y - (0.5 * (height + 1));
            if (distortion is not null)
            {
                (u, v) = distortion.Apply(u, v);
            }

            var xi = (place.Xi * DegreesPerRadian) - ((matrix.Cd11 * u) + (matrix.Cd12 * v));
            var eta = (place.Eta * DegreesPerRadian) - ((matrix.Cd21 * u) + (matrix.Cd22 * v));
            radii[i] = double.Hypot(
                ((matrix.Cd22 * xi) - (matrix.Cd12 * eta)) / det,
                ((matrix.Cd11 * eta) - (matrix.Cd21 * xi)) / det
            );
        }

        return radii;
    }

    public FieldFit Result(IReadOnlyList<StarMatch> matches, int[] used, double[] radii)
    {
        var squares = used.Sum(star => radii[star] * radii[star]);
        var rms = Math.Sqrt(squares / Math.Max((2 * used.Length) - unknowns, 1));
        return new(
            new TanWorldCoordinates(
                new(0.5 * (width + 1), 0.5 * (height + 1)),
                plane.Centre,
                matrix
            ),
            distortion,
            model,
            used,
            [.. Enumerable.Range(0, matches.Count).Except(used)],
            rms,
            used.Max(star => radii[star]),
            new(
                matrix.Scale * (rms * Math.Sqrt(centreVariance)),
                rms / unit * Math.Sqrt(turnVariance),
                Angle.FromRadians(rms / unit * Math.Sqrt(turnVariance))
            )
        );
    }
}
