using System.Globalization;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>Warns where the camera was turned and no flats were taken at the new angle.</summary>
internal static class FlatWatch
{
    /// <summary>Dust and shading shift on the sensor by nothing when the camera turns with its lens, but not with its rings.</summary>
    private static readonly Angle LeastTurn = Angle.FromDegrees(1.0);

    /// <summary>Fields that differ by less than this part are of one rig.</summary>
    private const double SameField = 0.02;

    /// <summary>The warnings.</summary>
    /// <param name="lights">Counted frames with the panels that they show.</param>
    /// <param name="flats">Flats with a time, in any order.</param>
    public static IEnumerable<string> Warnings(
        IEnumerable<(ShotFrame Frame, PlannedPanel Panel)> lights,
        IReadOnlyList<ShotFrame> flats
    )
    {
        foreach (var rig in Rigs(lights))
        {
            var shots = rig.OrderBy(shot => shot.Frame.At).ToList();
            for (var i = 1; i < shots.Count; i++)
            {
                // Against what the plan wants there, so that panels that stand turned against each other do not count.
                var turn = Off(shots[i]).WrappedSigned - Off(shots[i - 1]).WrappedSigned;
                if (turn.WrappedSigned.Magnitude < LeastTurn)
                {
                    continue;
                }

                var from = shots[i].Frame.At!.Value;
                var until = shots
                    .Skip(i + 1)
                    .Where(
                        (shot, k) =>
                            (Off(shot) - Off(shots[i + k])).WrappedSigned.Magnitude >= LeastTurn
                    )
                    .Select(shot => shot.Frame.At)
                    .FirstOrDefault();
                if (!flats.Any(flat => flat.At > from && (until is null || flat.At < until)))
                {
                    yield return string.Create(
                        CultureInfo.InvariantCulture,
                        $"The camera angle changed by {turn.WrappedSigned.Magnitude.Degrees:0.0}° at {shots[i].Frame.File} ({from:yyyy-MM-dd HH:mm} UTC), and no flats were taken since{(until is null ? ": take new ones before the camera is turned again" : " until it was turned once more")}."
                    );
                }
            }
        }
    }

    private static Angle Off((ShotFrame Frame, PlannedPanel Panel) shot) =>
        shot.Panel.PositionAngle.FrameTurnTo(shot.Frame.Pose!.Value.PositionAngle);

    private static List<List<(ShotFrame Frame, PlannedPanel Panel)>> Rigs(
        IEnumerable<(ShotFrame Frame, PlannedPanel Panel)> lights
    )
    {
        var rigs = new List<List<(ShotFrame Frame, PlannedPanel Panel)>>();
        foreach (var shot in lights.Where(shot => shot.Frame.At is not null))
        {
            var width = shot.Frame.Field.TangentWidth;
            var rig = rigs.Find(known =>
                Math.Abs((known[0].Frame.Field.TangentWidth / width) - 1.0) < SameField
            );
            if (rig is null)
            {
                rigs.Add([shot]);
            }
            else
            {
                rig.Add(shot);
            }
        }

        return rigs;
    }
}
