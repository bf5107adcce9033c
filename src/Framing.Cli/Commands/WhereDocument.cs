using System.Globalization;
using System.Text.Json;
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
