using System.Text.Json;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>Writes the sums of an evening into the report: trailing, power, scales and files, what to type, where to align.</summary>
internal static class EveningReport
{
    public static void Write(Utf8JsonWriter json, EveningNotes notes, FramingRequest request)
    {
        Trailing(json, notes.Evening.Trailing, request.Rig);
        Power(json, notes.Evening);
        Sums(json, notes.Evening.Sums);
        SwitchOn(json, notes.SwitchOn);
        Alignment(json, notes.Alignment, request);
    }

    private static void Trailing(Utf8JsonWriter json, TrailingSums trailing, Rig rig)
    {
        json.WriteStartObject("trailing");
        json.WriteBoolean("guided", trailing.IsGuided);
        Number(json, "cornerPx", trailing.CornerPx);
        Seconds(json, "longestSubS", trailing.Used.Longest);
        Seconds(json, "longestSubGuidedS", trailing.Guided.Longest);
        Seconds(json, "longestSubUnguidedS", trailing.Unguided.Longest);
        json.WriteNumber("limitPx", trailing.LimitPx);
        json.WriteString("guideStar", trailing.GuideStar == GuideStar.Corner ? "corner" : "centre");
        Number(json, "polarErrorArcmin", trailing.PolarError.Arcminutes);
        Number(json, "declinationDeg", trailing.Declination.Degrees);
        json.WriteStartArray("subs");
        foreach (var sub in trailing.Subs)
        {
            json.WriteStartObject();
            json.WriteString("filter", sub.Filter);
            json.WriteNumber("subS", sub.Sub.TotalSeconds);
            Number(json, "guidedPx", sub.GuidedPx);
            Number(json, "unguidedPx", sub.UnguidedPx);
            Number(json, "polarErrorGuidedArcmin", sub.ErrorGuided.Arcminutes);
            Number(json, "polarErrorUnguidedArcmin", sub.ErrorUnguided.Arcminutes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Number(json, "sessionHours", trailing.Session.TotalHours);
        Number(json, "creepArcmin", trailing.Creep.Arcminutes);
        Number(json, "turnDeg", trailing.Turn.Degrees);
        json.WriteStartArray("squeeze");
        Squeeze(json, trailing.Lowest, trailing.SqueezeLow, rig);
        Squeeze(json, trailing.Highest, trailing.SqueezeHigh, rig);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Squeeze(
        Utf8JsonWriter json,
        Angle? altitude,
        FieldSqueeze? squeeze,
        Rig rig
    )
    {
        if (squeeze is not { } air)
        {
            return;
        }

        json.WriteStartObject();
        Number(json, "altitudeDeg", altitude?.Degrees);
        Number(json, "verticalArcsec", air.Vertical.Arcseconds);
        Number(json, "horizontalArcsec", air.Horizontal.Arcseconds);
        Number(json, "verticalPx", air.Vertical / rig.Scale);
        json.WriteEndObject();
    }

    private static void Power(Utf8JsonWriter json, Evening evening)
    {
        if (evening.Power is not { } power)
        {
            json.WriteNull("power");
            return;
        }

        json.WriteStartObject("power");
        Number(json, "hoursNeeded", power.HoursNeeded);
        Number(json, "hoursAvailable", power.HoursAvailable);
        Number(json, "hoursLeft", power.HoursLeft);
        Number(json, "averageW", power.AverageWatts);
        Number(json, "neededWh", power.NeededWattHours);
        Number(json, "usableWh", power.UsableWattHours);
        json.WriteNumber("batteryC", evening.Request.BatteryCelsius);
        json.WriteEndObject();
    }

    private static void Sums(Utf8JsonWriter json, RigSums sums)
    {
        json.WriteStartObject("sums");
        Number(json, "pxPerSeeing", sums.PixelsPerSeeing);
        Number(json, "guideScaleArcsecPerPx", sums.GuideScale?.Arcseconds);
        Number(json, "imagePxPerGuidePx", sums.GuideRatio);
        Number(json, "guideErrorPx", sums.GuideErrorPx);
        json.WriteNumber("frameBytes", sums.FrameBytes);
        json.WriteNumber("subsWanted", sums.Wanted);
        if (sums.InTheNight is { } subs)
        {
            json.WriteNumber("subsInTheNight", subs);
        }
        else
        {
            json.WriteNull("subsInTheNight");
        }

        json.WriteNumber("bytes", Math.Round(sums.Bytes));
        json.WriteEndObject();
    }

    private static void SwitchOn(Utf8JsonWriter json, SwitchOn? entry)
    {
        if (entry is null)
        {
            json.WriteNull("switchOn");
            return;
        }

        json.WriteStartObject("switchOn");
        json.WriteString("at", UtcText.Of(entry.At.Utc));
        json.WriteString("localTime", entry.At.IsoText);
        json.WriteString("time", entry.TimeText);
        json.WriteString("date", entry.DateText);
        json.WriteString("dateOrder", entry.DateOrderText);
        json.WriteString("zone", entry.ZoneText);
        json.WriteString("zoneName", entry.ZoneName);
        json.WriteBoolean("daylightSaving", entry.IsDaylightSaving);
        json.WriteString("latitude", entry.LatitudeText);
        json.WriteString("longitude", entry.LongitudeText);
        json.WriteString("clockChange", entry.Change?.Words);
        json.WriteEndObject();
    }

    private static void Alignment(
        Utf8JsonWriter json,
        AlignmentNotes? alignment,
        FramingRequest request
    )
    {
        if (alignment is null)
        {
            json.WriteNull("alignment");
            return;
        }

        json.WriteStartObject("alignment");
        json.WriteString("at", UtcText.Of(alignment.At));
        json.WriteStartArray("stars");
        foreach (var star in alignment.Stars)
        {
            var (ra, dec) = EveningText.Entry(star, request);
            json.WriteStartObject();
            json.WriteString("name", star.Star.Name);
            Number(json, "vMag", star.Star.Magnitude);
            Direction(json, "j2000", star.Star.Icrs);
            Direction(json, "ofDate", star.OfDate);
            json.WriteStartObject("entry");
            json.WriteString("ra", ra);
            json.WriteString("dec", dec);
            json.WriteEndObject();
            Number(json, "altitudeDeg", star.Place.Altitude.Degrees);
            Number(json, "azimuthDeg", star.Place.Azimuth.Degrees);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Direction(Utf8JsonWriter json, string name, SkyDirection direction)
    {
        json.WriteStartObject(name);
        json.WriteNumber("raDeg", ReportNumbers.Turn(direction.RightAscension.Degrees));
        json.WriteNumber("decDeg", ReportNumbers.Degrees(direction.Declination.Degrees));
        json.WriteEndObject();
    }

    // Whole seconds, rounded down: what is longer would be too long.
    private static void Seconds(Utf8JsonWriter json, string name, TimeSpan? time) =>
        Number(
            json,
            name,
            time is { } longest ? Math.Floor(longest.TotalSeconds * 10.0) / 10.0 : null
        );

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, Math.Round(number, 4, MidpointRounding.AwayFromZero) + 0.0);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
