using Framing.Sky;

namespace Framing.Planning;

/// <summary>One panel of a framing.</summary>
public sealed record PlannedPanel
{
    /// <summary>Counted from 1, row by row from the top left of the displayed mosaic.</summary>
    public required int Number { get; init; }

    /// <summary>Counted from 1, from the left of the displayed mosaic.</summary>
    public required int Column { get; init; }

    /// <summary>Counted from 1, from the top of the displayed mosaic.</summary>
    public required int Row { get; init; }

    /// <summary>The middle, J2000.</summary>
    public required SkyDirection Centre { get; init; }

    /// <summary>Position angle of the displayed picture's up direction at the middle, against J2000 north.</summary>
    public required PositionAngle PositionAngle { get; init; }

    /// <summary>Outer corners, J2000: top-left, top-right, bottom-right, bottom-left as displayed.</summary>
    public required IReadOnlyList<SkyDirection> Corners { get; init; }

    /// <summary>The middle against the true equator and equinox of date.</summary>
    public required SkyDirection OfDate { get; init; }

    /// <summary>The time, UTC, of <see cref="OfDate"/>.</summary>
    public required DateTime At { get; init; }

    /// <summary>Right ascension as the hand control takes it.</summary>
    public required string EntryRa { get; init; }

    /// <summary>Declination as the hand control takes it.</summary>
    public required string EntryDec { get; init; }

    /// <summary>The same panel with its coordinates of date for another time.</summary>
    /// <param name="utc">The time, UTC, rounded to the second.</param>
    /// <param name="request">Tells what the hand control takes.</param>
    /// <returns>The panel; what the hand control takes follows where it takes coordinates of date.</returns>
    public PlannedPanel SeenAt(DateTime utc, FramingRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var at = new DateTime(
            (utc.Ticks + (TimeSpan.TicksPerSecond / 2))
                / TimeSpan.TicksPerSecond
                * TimeSpan.TicksPerSecond,
            DateTimeKind.Utc
        );
        var ofDate = OfDateFrame.At(TerrestrialTime.FromUtc(at)).ToOfDate(Centre);
        var entry = request.GotoFrame == GotoFrame.OfDate ? ofDate : Centre;
        return this with
        {
            OfDate = ofDate,
            At = at,
            EntryRa = EntryText.RightAscension(entry.RightAscension, request.EntryFormat),
            EntryDec = EntryText.Declination(entry.Declination, request.EntryFormat),
        };
    }
}
