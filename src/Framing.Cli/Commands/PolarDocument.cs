using System.Text.Json;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>What <c>polar --json</c> prints.</summary>
internal static class PolarDocument
{
    public static void Write(Utf8JsonWriter json, PolarDelivery delivery)
    {
        if (delivery.Result.Finding is not { } finding)
        {
            json.WriteString("reason", delivery.Result.Refusal);
            return;
        }

        var east = PolarText.Way(finding, delivery.Site) == "east" ? 1.0 : -1.0;
        Number(json, "errorArcmin", finding.Error.Arcminutes);
        Number(json, "errorSigmaArcmin", finding.ErrorSigma.Arcminutes);
        Number(json, "tooHighArcmin", finding.TooHigh.Arcminutes);
        Number(json, "tooHighSigmaArcmin", finding.TooHighSigma.Arcminutes);
        Number(json, "tooFarEastArcmin", east * finding.TooFarClockwise.Magnitude.Arcminutes);
        Number(json, "tooFarEastSigmaArcmin", finding.TooFarClockwiseSigma.Arcminutes);
        Number(json, "axisAltitudeDeg", finding.Altitude.Degrees);
        Number(json, "axisAzimuthDeg", finding.Azimuth.Degrees);
        Number(json, "turnedDeg", finding.Turned.Degrees);
        Number(json, "disagreementArcmin", finding.Disagreement.Arcminutes);
        json.WriteBoolean("leaveIt", finding.Error < PolarText.GoodEnough);
        json.WriteString("do", PolarText.Do(finding, delivery.Site));
    }

    private static void Number(Utf8JsonWriter json, string name, double value)
    {
        var rounded = Math.Round(value, 6, MidpointRounding.AwayFromZero);
        json.WriteNumber(name, rounded == 0.0 ? 0.0 : rounded);
    }
}
