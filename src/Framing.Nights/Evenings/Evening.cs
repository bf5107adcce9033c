using Framing.Sky;

namespace Framing.Nights;

/// <summary>The sums of an evening: trailing, power, scales, files.</summary>
/// <param name="Request">What was asked.</param>
/// <param name="Dark">The dark time; null without a site.</param>
/// <param name="Session">The time under the sky.</param>
/// <param name="Trailing">How far stars trail and how the air squeezes the frame.</param>
/// <param name="Sums">Scales and files.</param>
/// <param name="Power">Whether the battery lasts; null without one.</param>
/// <param name="NearestSun">How close the Sun comes to a panel, or to the way from one to the next, at midnight.</param>
public sealed record Evening(
    EveningRequest Request,
    DarkTime? Dark,
    Session Session,
    TrailingSums Trailing,
    RigSums Sums,
    PowerBudget? Power,
    Angle NearestSun
)
{
    /// <summary>What the user should know: what, by how much, and what to do.</summary>
    public IReadOnlyList<string> Cautions => EveningCautions.Of(this);

    /// <summary>What holds for every evening of this kind, to be said once.</summary>
    public IReadOnlyList<string> Reminders => EveningCautions.Reminders(this);

    /// <summary>Works out the sums.</summary>
    /// <param name="request">What they depend on.</param>
    /// <returns>The sums.</returns>
    /// <exception cref="ArgumentException">There is no panel.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The date is outside of the years 1902 to 2198.</exception>
    public static Evening Of(EveningRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Panels.Count == 0)
        {
            throw new ArgumentException("An evening needs a panel to shoot.", nameof(request));
        }

        DarkTime? dark = null;
        var reaches = new List<DarkReach>();
        if (request.Site is { } site)
        {
            var night = NightOfSun.Of(site, request.Evening);
            dark = DarkTime.Of(night, request.SunBelow);
            if (dark.Stretches.Count > 0)
            {
                var hours = new SiteHours(site, night.Start, night.End);
                reaches.AddRange(
                    request.Panels.Select(panel =>
                        DarkReach.Of(hours.Follow(panel), dark.Stretches, request.LeastAltitude)
                    )
                );
            }
        }

        var session = SessionOf(request, dark, reaches);
        return new(
            request,
            dark,
            session,
            TrailingSums.Of(request, session.Length, reaches),
            RigSums.Of(request, dark is null ? null : ShotUntil(request, dark, reaches).Shot),
            request.Battery is { } battery
                ? PowerBudget.Of(battery, request.Loads, session.Length, request.BatteryCelsius)
                : null,
            SunNear(request, dark)
        );
    }

    private static Session SessionOf(
        EveningRequest request,
        DarkTime? dark,
        List<DarkReach> reaches
    )
    {
        if (dark is not null)
        {
            var (last, _) = ShotUntil(request, dark, reaches);
            return Session.Of(dark, last, request.Setup, request.Flats);
        }

        // Without a site nobody knows how long the night is: all that is wished for, up to a long night.
        var longest = TimeSpan.FromHours(12.0);
        var wished = RigSums.Wished(request);
        return new(
            null,
            null,
            request.Setup + (wished < longest ? wished : longest) + request.Flats
        );
    }

    /// <summary>When the last wished sub is shot or the last panel is lost, and how long is shot until then.</summary>
    private static (DateTime? Last, TimeSpan Shot) ShotUntil(
        EveningRequest request,
        DarkTime dark,
        List<DarkReach> reaches
    )
    {
        var wished = RigSums.Wished(request);
        var ready = dark.Night.SunDown is [{ HeldBefore: false, Start: var sunset }, ..]
            ? sunset + request.Setup
            : DateTime.MinValue;
        var (shot, until, last) = (TimeSpan.Zero, ready, (DateTime?)null);
        foreach (
            var stretch in reaches
                .SelectMany(reach => reach.Stretches)
                .OrderBy(stretch => stretch.Start)
        )
        {
            var from = stretch.Start > until ? stretch.Start : until;
            if (stretch.End <= from || shot >= wished)
            {
                continue;
            }

            var left = wished - shot;
            var end = stretch.End - from < left ? stretch.End : from + left;
            shot += end - from;
            (until, last) = (end, end);
        }

        return (last, shot);
    }

    private static Angle SunNear(EveningRequest request, DarkTime? dark)
    {
        const int steps = 16;
        var midnight =
            dark?.Night.Start.AddHours(12.0)
            ?? request.Evening.AddDays(1).ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        var frame = OfDateFrame.At(TerrestrialTime.FromUtc(midnight));
        var sun = frame.ToIcrs(frame.Sun);
        var nearest = Angle.FromDegrees(180.0);
        for (var i = 0; i < request.Panels.Count; i++)
        {
            var from = request.Panels[i];
            var to = request.Panels[Math.Min(i + 1, request.Panels.Count - 1)];
            for (var step = 0; step < steps; step++)
            {
                var part = step / (double)steps;
                var way = (from.Vector * (1.0 - part)) + (to.Vector * part);
                nearest = Angle.Min(nearest, SkyDirection.FromVector(way).SeparationTo(sun));
            }
        }

        return nearest;
    }
}
