using System.Text.Json;
using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>What one entry of check values gives and expects.</summary>
internal sealed record Check(JsonElement Inputs, JsonElement Expect, JsonElement Allowed)
{
    public DateTime Utc => TestTable.Time(Text("utc"));

    public ObservingSite Site =>
        new(
            Angle.FromDegrees(In("lat")),
            Angle.FromDegrees(
                Inputs.TryGetProperty("lon_east", out var east) ? east.GetDouble() : In("lon")
            ),
            0.0,
            AirConditions.Usual
        );

    public double In(string name) => Inputs.GetProperty(name).GetDouble();

    public string Text(string name) => Inputs.GetProperty(name).GetString()!;

    /// <summary>Within the entry's tolerance, or within a stated one where ours is narrower or the entry is of another model.</summary>
    public void Near(string name, double actual, double? tolerance = null) =>
        Assert.Equal(Expect.GetProperty(name).GetDouble(), actual, tolerance ?? Tolerance(name));

    public void NearAngle(string name, Angle actual, double? tolerance = null)
    {
        var off = Math.IEEERemainder(actual.Degrees - Expect.GetProperty(name).GetDouble(), 360.0);
        Assert.InRange(Math.Abs(off), 0.0, tolerance ?? Tolerance(name));
    }

    public void NearTime(string name, DateTime actual)
    {
        var expected = TestTable.Time(Expect.GetProperty(name).GetString()!);
        Assert.InRange(Math.Abs((actual - expected).TotalSeconds), 0.0, Tolerance("seconds"));
    }

    private double Tolerance(string name) =>
        Allowed.ValueKind == JsonValueKind.Number
            ? Allowed.GetDouble()
            : Allowed.GetProperty(name).GetDouble();
}
