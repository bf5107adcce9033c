using Framing.Sky;

namespace Framing.Solving;

/// <summary>The search where place and scale are known roughly: among many more quads of a small part of the sky.</summary>
internal static class HintedSearch
{
    // Stars for each part of the sky as large as the frame; with eight neighbours each makes 56 quads.
    private const double StarsPerFrame = 60.0;

    private const int Neighbours = 8;
    private const int ThoroughNeighbours = 11;

    public static Finding? Search(
        QuadSearch search,
        SolveRequest request,
        in SearchLimits limits,
        int thoroughness,
        CancellationToken token
    )
    {
        var neighbours = thoroughness == 1 ? Neighbours : ThoroughNeighbours;
        var stars = request.Stars;
        var centre = SkyDirection.FromVector(limits.Near!.Value);
        var side = Math.Sqrt((double)request.Width * request.Height) * limits.MostScale;
        var diagonal = double.Hypot(request.Width, request.Height) * limits.MostScale;
        var radius = Math.Min(Math.PI, limits.Reach + (0.5 * diagonal));
        var cosine = Math.Cos(radius);
        var steradians = Math.Tau * (1.0 - cosine);
        var most = (int)Math.Max(64.0, thoroughness * StarsPerFrame * steradians / (side * side));

        var near = new StarBuffer();
        var wanted = (int)Math.Min(stars.Count, 4.0 * most * stars.Levels.Steradians / steradians);
        stars
            .Levels.OfBrightest(wanted)
            .Gather(centre.RightAscension.Radians, centre.Declination.Radians, radius, near);
        var numbers = new List<int>();
        foreach (var star in near.Items)
        {
            if (stars.Vectors[star].Dot(centre.Vector) >= cosine)
            {
                numbers.Add(star);
            }
        }

        // Stars are numbered by brightness.
        numbers.Sort();
        int[] brightest = [.. numbers.Take(most)];
        if (brightest.Length <= neighbours)
        {
            return null;
        }

        var part = new ReferenceStars(Array.ConvertAll(brightest, stars.Row), steradians);
        var index = QuadIndex.Build(part, QuadLevel.Dense(part.Count, neighbours));
        return search.Search(index, brightest, token);
    }
}
