using Framing.Sky;

namespace Framing.Nights;

/// <summary>How far stars trail in the subs of a plan, how far the field creeps, and how the air squeezes the frame.</summary>
/// <remarks>
/// The direction in which the axis misses the pole is not known: the worst one is taken, and with it the worst hour angle
/// is always among those of the night.
/// </remarks>
public sealed record TrailingSums
{
    private TrailingSums() { }

    /// <summary>True when the plan has a guider.</summary>
    public required bool IsGuided { get; init; }

    /// <summary>Where the guide star stands, or would stand at the worst.</summary>
    public required GuideStar GuideStar { get; init; }

    /// <summary>How far the mount's axis misses the pole.</summary>
    public required Angle PolarError { get; init; }

    /// <summary>The trail that is allowed, (binned) pixels.</summary>
    public required double LimitPx { get; init; }

    /// <summary>The declination of the panel that is farthest from the equator.</summary>
    public required Angle Declination { get; init; }

    /// <summary>The trail with a guider.</summary>
    public required StarTrail Guided { get; init; }

    /// <summary>The trail without a guider.</summary>
    public required StarTrail Unguided { get; init; }

    /// <summary>The subs of each filter.</summary>
    public required IReadOnlyList<SubTrail> Subs { get; init; }

    /// <summary>How long the session is.</summary>
    public required TimeSpan Session { get; init; }

    /// <summary>How far the field creeps off through the session where nobody brings it back.</summary>
    public required Angle Creep { get; init; }

    /// <summary>How far the camera's angle turns against north through the session.</summary>
    public required Angle Turn { get; init; }

    /// <summary>The lowest apparent altitude at which a panel is shot; null where it is not known.</summary>
    public required Angle? Lowest { get; init; }

    /// <summary>The highest apparent altitude at which a panel is shot; null where it is not known.</summary>
    public required Angle? Highest { get; init; }

    /// <summary>How the air squeezes the frame's long side at the lowest altitude.</summary>
    public required FieldSqueeze? SqueezeLow { get; init; }

    /// <summary>The same at the highest altitude.</summary>
    public required FieldSqueeze? SqueezeHigh { get; init; }

    /// <summary>The trail as the plan shoots.</summary>
    public StarTrail Used => IsGuided ? Guided : Unguided;

    /// <summary>The longest trail of the plan's subs as it shoots, (binned) pixels; null where it names none.</summary>
    public double? CornerPx =>
        Subs.Count == 0 ? null : Subs.Max(sub => IsGuided ? sub.GuidedPx : sub.UnguidedPx);

    internal static TrailingSums Of(
        EveningRequest request,
        TimeSpan session,
        IReadOnlyList<DarkReach> reaches
    )
    {
        var declination = request
            .Panels.Select(panel => panel.Declination)
            .MaxBy(dec => Math.Abs(dec.Radians));
        var star = request.GuideStar ?? GuideStar.Corner;
        StarTrail Trail(GuideStar? guide) =>
            StarTrail.Of(
                new(request.Rig, guide, request.PolarError, declination, request.TrailLimitPx)
            );
        var (guided, unguided) = (Trail(star), Trail(null));
        var clear = reaches.Where(reach => reach.Lowest is not null).ToList();
        Angle? lowest = clear.Count == 0 ? null : clear.Min(reach => reach.Lowest!.Value);
        Angle? highest = clear.Count == 0 ? null : clear.Max(reach => reach.Highest.Altitude);
        return new()
        {
            IsGuided = request.GuideStar is not null,
            GuideStar = star,
            PolarError = request.PolarError,
            LimitPx = request.TrailLimitPx,
            Declination = declination,
            Guided = guided,
            Unguided = unguided,
            Subs =
            [
                .. request.Subs.Select(sub => new SubTrail(
                    sub.Filter,
                    sub.Sub,
                    guided.Px(sub.Sub),
                    unguided.Px(sub.Sub),
                    guided.ErrorFor(sub.Sub),
                    unguided.ErrorFor(sub.Sub)
                )),
            ],
            Session = session,
            Creep = guided.Creep(session),
            Turn = guided.Turn(session),
            Lowest = lowest,
            Highest = highest,
            SqueezeLow = Squeeze(request, lowest),
            SqueezeHigh = Squeeze(request, highest),
        };
    }

    private static FieldSqueeze? Squeeze(EveningRequest request, Angle? apparent)
    {
        if (apparent is not { } altitude || request.Site is not { } site)
        {
            return null;
        }

        var field = request.Rig.Field;
        var extent = Angle.Max(field.Width, field.Height);
        var middle = altitude - Refraction.AtApparent(altitude, site.Air);

        // A frame whose lower edge would stand in the ground has no squeeze that could be given.
        return middle - (extent / 2.0) > Angle.Zero && middle + (extent / 2.0) <= Zenith
            ? FieldSqueeze.Of(middle, extent, site.Air)
            : null;
    }

    private static Angle Zenith => Angle.FromDegrees(90.0);
}
