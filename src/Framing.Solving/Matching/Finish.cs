using Framing.Sky;

namespace Framing.Solving;

/// <summary>From a certain guess to the best fit: all stars, at the date of the frame, with the distortion that pays.</summary>
internal static class Finish
{
    private const int MostStars = 3000;
    private const int Rounds = 4;
    private const double LeastRadius = 0.8;
    private const double MostRadius = 6.0;
    private const double LargestStrain = 0.03;

    /// <summary>Fits all stars of the frame.</summary>
    /// <param name="field">The stars of the frame.</param>
    /// <param name="request">What is known of it.</param>
    /// <param name="finding">The guess.</param>
    /// <returns>Null when the stars do not settle a fit of nearly square pixels.</returns>
    public static SolvedFrame? Of(DetectionField field, SolveRequest request, Finding finding)
    {
        var stars = StarsAround(field, request, finding.Map);
        var places = stars.ConvertAll(star => request.Stars.At(star, request.JulianYear));
        var radius = Math.Clamp(5.0 * finding.RmsPixels, LeastRadius, MostRadius);
        FieldFit? fit = null;
        List<(int Detection, int Star)> pairs = [];
        for (var round = 0; round < Rounds; round++)
        {
            pairs = Pair(field, places, finding.Map, fit, radius);
            var next = FieldFitter.FitWhatPays(
                pairs.ConvertAll(pair => Match(field, places, pair)),
                field.Width,
                field.Height
            );
            if (next is null)
            {
                return null;
            }

            fit = next;
            radius = Math.Clamp(5.0 * fit.RmsPixels, LeastRadius, radius);
        }

        return fit is null || Strain(fit.Linear.Matrix) > LargestStrain
            ? null
            : new(
                fit,
                Matches(field, request, stars, places, pairs, fit),
                finding.FalseMatchProbability
            );
    }

    private static List<int> StarsAround(DetectionField field, SolveRequest request, PlaneMap map)
    {
        var stars = request.Stars;
        var side = field.Size * map.Scale;
        var wanted = Math.Min(MostStars, (4 * field.Count) + 100);
        var depth = (int)Math.Min(stars.Count, wanted * stars.Levels.Steradians / (side * side));
        var near = new StarBuffer();
        var middle = SkyDirection.FromVector(map.Middle());
        stars
            .Levels.OfBrightest(depth)
            .Gather(
                middle.RightAscension.Radians,
                middle.Declination.Radians,
                Math.Atan(0.52 * double.Hypot(field.Width, field.Height) * map.Scale),
                near
            );
        var found = new List<int>(near.Items.Length);
        foreach (var star in near.Items)
        {
            if (star < depth)
            {
                found.Add(star);
            }
        }

        found.Sort();
        return found;
    }

    /// <summary>Each detection with the nearest star within a radius, each star with one detection.</summary>
    private static List<(int Detection, int Star)> Pair(
        DetectionField field,
        List<SkyDirection> places,
        PlaneMap map,
        FieldFit? fit,
        double radius
    )
    {
        var taken = new Dictionary<int, (int Star, double Distance)>();
        for (var star = 0; star < places.Count; star++)
        {
            if (!TryPlace(field, places[star], map, fit, out var u, out var v))
            {
                continue;
            }

            var detection = field.Nearest(u, v, radius, field.Count);
            if (detection < 0)
            {
                continue;
            }

            var distance = double.Hypot(field.U[detection] - u, field.V[detection] - v);
            if (!taken.TryGetValue(detection, out var other) || distance < other.Distance)
            {
                taken[detection] = (star, distance);
            }
        }

        return [.. taken.Select(pair => (pair.Key, pair.Value.Star)).Order()];
    }

    private static bool TryPlace(
        DetectionField field,
        SkyDirection place,
        PlaneMap map,
        FieldFit? fit,
        out double u,
        out double v
    )
    {
        if (fit is null)
        {
            return map.TryPlace(place.Vector, out u, out v) && field.Contains(u, v);
        }

        (u, v) = (0.0, 0.0);
        if (!fit.Coordinates.TrySkyToPixel(place, out var pixel))
        {
            return false;
        }

        (u, v) = (pixel.X - (0.5 * (field.Width + 1)), pixel.Y - (0.5 * (field.Height + 1)));
        return field.Contains(u, v);
    }

    private static StarMatch Match(
        DetectionField field,
        List<SkyDirection> places,
        (int Detection, int Star) pair
    ) =>
        new(
            new(
                field.U[pair.Detection] + (0.5 * (field.Width + 1)),
                field.V[pair.Detection] + (0.5 * (field.Height + 1))
            ),
            places[pair.Star]
        );

    private static List<MatchedStar> Matches(
        DetectionField field,
        SolveRequest request,
        List<int> stars,
        List<SkyDirection> places,
        List<(int Detection, int Star)> pairs,
        FieldFit fit
    )
    {
        var used = fit.Used.ToHashSet();
        var matches = new List<MatchedStar>(pairs.Count);
        for (var i = 0; i < pairs.Count; i++)
        {
            var (detection, star) = pairs[i];
            fit.Coordinates.TrySkyToPixel(places[star], out var pixel);
            matches.Add(
                new(
                    field.Order[detection],
                    places[star],
                    request.Stars.Magnitudes[stars[star]],
                    double.Hypot(
                        pixel.X - (0.5 * (field.Width + 1)) - field.U[detection],
                        pixel.Y - (0.5 * (field.Height + 1)) - field.V[detection]
                    ),
                    used.Contains(i)
                )
            );
        }

        return matches;
    }

    private static double Strain(PixelMatrix matrix)
    {
        var sum =
            (matrix.Cd11 * matrix.Cd11)
            + (matrix.Cd12 * matrix.Cd12)
            + (matrix.Cd21 * matrix.Cd21)
            + (matrix.Cd22 * matrix.Cd22);
        return Math.Sqrt(Math.Max(0.0, (sum / (2.0 * Math.Abs(matrix.Determinant))) - 1.0));
    }
}
