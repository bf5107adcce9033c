using Framing.Imaging;
using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Takes centre and camera angle from a frame that carries a solution.</summary>
internal sealed class LikeFrame : IRotationStrategy
{
    private readonly string name;
    private readonly PositionAngle angle;

    private LikeFrame(string path, SkyFacts place)
    {
        name = Path.GetFileName(path);
        angle = place.DisplayedPositionAngle;
    }

    /// <summary>The same request with the centre and angle of a frame.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="path">The frame.</param>
    /// <param name="messages">Takes what the user should know.</param>
    /// <returns>The request.</returns>
    public static FramingRequest Apply(FramingRequest request, string path, List<string> messages)
    {
        var place = SolvedPicture.PlaceOf(path);
        if (place.DisplayedMirrored != request.Rig.Mirrored)
        {
            messages.Add(
                $"{path} is {(place.DisplayedMirrored ? "mirrored" : "not mirrored")}, but the plan's rig is {(request.Rig.Mirrored ? "mirrored" : "not")}: the same sky, turned over. See rig.mirrored."
            );
        }

        return request with
        {
            FixedCentre = place.Centre,
            // One frame again, unless the plan says how many.
            Grid = request.Grid.IsFewest ? GridWish.Fixed(1, 1) : request.Grid,
            Rotation = new("like", new LikeFrame(path, place), StrategySettings.None),
        };
    }

    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(angle, $"centre and angle as in {name}");
}
