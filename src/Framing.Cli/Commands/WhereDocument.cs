using System.Globalization;
using System.Text.Json;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>Writes where a place of the sky is as JSON.</summary>
internal static class WhereDocument
{
    public static void Write(Utf8JsonWriter writer, WhereAnswer answer)
    {
        writer.WriteString("name", answer.Name);
        Coordinates(writer, "j2000", answer.J2000);
        Coordinates(writer, "ofDate", answer.OfDate);
        Time(writer, "at", answer.Utc);
        var place = answer.Over?.Place;
        Number(writer, "altitudeDeg", place?.Altitude.Degrees, 5);
        Number(writer, "trueAltitudeDeg", place?.TrueAltitude.Degrees, 5);
        Number(writer, "azimuthDeg", place?.Azimuth.Degrees, 5);
        Number(writer, "hourAngleHours", place?.HourAngle.Hours, 6);
        Number(writer, "airmass", place?.Airmass, 4);
        Number(writer, "parallacticAngleDeg", place?.ParallacticAngle.Degrees, 5);
        Time(writer, "nextTransit", answer.Over?.NextTransit);
        Time(writer, "nextRise", answer.Over?.NextRise);
        Time(writer, "nextSet", answer.Over?.NextSet);
        Skyline(writer, answer.Over?.Skyline);
        Moon(writer, answer.Over?.Moon);
        writer.WriteStartObject("sun");
        Number(writer, "separationDeg", answer.FromSun.Degrees, 4);
        Number(writer, "trueAltitudeDeg", answer.Over?.Sun.TrueAltitude.Degrees, 4);
        writer.WriteEndObject();
        Night(writer, answer.Over?.Night);
        writer.WriteStartArray("cautions");
        if (answer.Caution is { } caution)
        {
            writer.WriteStringValue(caution);
        }

        writer.WriteEndArray();
    }

    private static void Skyline(Utf8JsonWriter writer, OverSkyline? skyline)
    {
        if (skyline is null)
        {
            writer.WriteNull("overSkyline");
            return;
        }

        writer.WriteStartObject("overSkyline");
        Number(writer, "skylineAltitudeDeg", skyline.SkylineAltitude.Degrees, 3);
        writer.WriteBoolean("clear", skyline.IsClear);
        Time(writer, "nextRise", skyline.NextRise);
        Time(writer, "nextSet", skyline.NextSet);
        writer.WriteEndObject();
    }

    private static void Moon(Utf8JsonWriter writer, MoonOverSite? moon)
    {
        if (moon is null)
        {
            writer.WriteNull("moon");
            return;
        }

        writer.WriteStartObject("moon");
        writer.WriteString("phase", moon.Phase.Words);
        Number(writer, "illuminatedFraction", moon.Phase.IlluminatedFraction, 4);
        Number(writer, "altitudeDeg", moon.Sight.Place.Altitude.Degrees, 4);
        Number(writer, "azimuthDeg", moon.Sight.Place.Azimuth.Degrees, 4);
        Number(writer, "separationDeg", moon.Separation.Degrees, 4);
        Number(writer, "skyBrighterFactor", moon.Light.Factor, 2);
        Number(writer, "skyBrighterMag", moon.Light.Magnitudes, 2);
        Number(writer, "darkSkyMagArcsec2", MoonOverSite.DarkSky, 2);
        writer.WriteEndObject();
    }

    private static void Night(Utf8JsonWriter writer, NightOfSun? night)
    {
        if (night is null)
        {
            writer.WriteNull("night");
            return;
        }

        writer.WriteStartObject("night");
        writer.WriteString(
            "date",
            night.Evening.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        writer.WriteString("words", night.Words);
        Event(writer, "sunset", "sunrise", night.SunDown);
        Event(writer, "darkFrom", "darkTo", night.Dark);
        writer.WriteEndObject();
    }

    private static void Event(
        Utf8JsonWriter writer,
        string from,
        string to,
        IReadOnlyList<UtcInterval> stretches
    )
    {
        Time(writer, from, stretches is [{ HeldBefore: false } first, ..] ? first.Start : null);
        Time(writer, to, stretches is [.., { HoldsAfter: false } last] ? last.End : null);
    }

    private static void Coordinates(Utf8JsonWriter writer, string name, SkyDirection direction)
    {
        writer.WriteStartObject(name);
        Number(writer, "raDeg", direction.RightAscension.Degrees, 6);
        Number(writer, "decDeg", direction.Declination.Degrees, 6);
        writer.WriteEndObject();
    }

    private static void Time(Utf8JsonWriter writer, string name, DateTime? utc) =>
        writer.WriteString(
            name,
            utc?.AddMilliseconds(500.0)
                .ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture)
        );

    private static void Number(Utf8JsonWriter writer, string name, double? value, int digits)
    {
        if (value is { } number)
        {
            var rounded = Math.Round(number, digits, MidpointRounding.AwayFromZero) + 0.0;
            writer.WriteNumber(name, rounded);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
