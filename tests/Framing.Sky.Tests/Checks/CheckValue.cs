using System.Text.Json;

namespace Framing.Sky.Tests;

/// <summary>One entry of a file of check values: inputs, what is expected, the file's own tolerance.</summary>
internal sealed class CheckValue(JsonElement entry)
{
    private readonly HashSet<string> seen = new(StringComparer.Ordinal);

    public string Id => entry.GetProperty("id").GetString()!;

    public JsonElement Inputs => entry.GetProperty("inputs");

    public JsonElement Expected => entry.GetProperty("expect");

    public double Input(string name) => Inputs.GetProperty(name).GetDouble();

    public string InputText(string name) => Inputs.GetProperty(name).GetString()!;

    /// <summary>An expected value, marked as looked at.</summary>
    public JsonElement Expect(string name)
    {
        seen.Add(name);
        return Expected.GetProperty(name);
    }

    /// <summary>Asserts a number at the file's tolerance.</summary>
    public void Close(string name, double actual) => Close(name, actual, Tolerance(name));

    /// <summary>Asserts a number at a tolerance of our own; the reason stands beside the call.</summary>
    public void Close(string name, double actual, double tolerance)
    {
        var expected = Expect(name).GetDouble();
        Assert.True(
            Math.Abs(actual - expected) <= tolerance,
            FormattableString.Invariant(
                $"{Id}: {name} is {actual:R}, expected {expected:R} within {tolerance:R}."
            )
        );
    }

    public double Tolerance(string name)
    {
        var tolerance = entry.GetProperty("tolerance");
        return tolerance.ValueKind == JsonValueKind.Object
            ? tolerance.GetProperty(name).GetDouble()
            : tolerance.GetDouble();
    }

    /// <summary>Asserts that nothing expected was left unlooked at.</summary>
    public void Finish()
    {
        var left = Expected
            .EnumerateObject()
            .Select(item => item.Name)
            .Where(name => !seen.Contains(name));
        Assert.Empty(left);
    }
}
