using System.Globalization;

namespace Framing.Cli.Tests;

public sealed class FindCommandTests
{
    [Theory]
    [InlineData("Heart Nebula (IC 1805)", "ic1805")]
    [InlineData("Heart Nebula (IC 1805)", "heart", "nebula")]
    [InlineData("Sh2-129", "sh2", "129")]
    [InlineData("NGC 281", "NGC0281")]
    [InlineData("Andromeda", "m31")]
    public void Find_HoweverItIsWritten_FindsIt(string expected, params string[] words)
    {
        using var session = new Session();
        var outcome = session.Run(["find", .. words]);
        Assert.Equal(0, outcome.Code);
        Assert.Contains(expected, outcome.Output, StringComparison.Ordinal);
        Assert.Contains("J2000", outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("M {0}", 110)]
    [InlineData("C {0}", 109)]
    [InlineData("Sh2-{0}", 313)]
    public void Find_EveryNumberOfACatalogue_FindsTheObjectThatBearsIt(string form, int numbers)
    {
        using var session = new Session();
        var found = 0;
        for (var number = 1; number <= numbers; number++)
        {
            var name = string.Format(CultureInfo.InvariantCulture, form, number);
            var json = session.Run("find", name, "--json").Json();
            Assert.Contains(
                name,
                json.GetProperty("names")
                    .EnumerateArray()
                    .Select(other => other.GetString())
                    .Append(json.GetProperty("id").GetString())
            );
            found++;
        }

        Assert.Equal(numbers, found);
    }

    [Fact]
    public void Find_AsJson_GivesPlaceAndSize()
    {
        using var session = new Session();
        var json = session.Run("find", "ic", "1848", "--json").Json();
        Assert.Equal("IC 1848", json.GetProperty("id").GetString());

        // deep-sky.csv, row IC 1848.
        Assert.Equal(43.832, json.GetProperty("j2000").GetProperty("raDeg").GetDouble(), 4);
        Assert.Equal(60.447, json.GetProperty("j2000").GetProperty("decDeg").GetDouble(), 4);
        Assert.Equal(114.0, json.GetProperty("majorArcmin").GetDouble(), 3);
        Assert.Equal(70.0, json.GetProperty("positionAngleDeg").GetDouble(), 3);
    }

    [Fact]
    public void Find_OfAStar_SaysSo()
    {
        using var session = new Session();
        var outcome = session.Run("find", "vega");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("magnitude 0.0", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_OtherNames_DoNotRepeatTheHeading()
    {
        using var session = new Session();
        var outcome = session.Run("find", "vega");
        Assert.StartsWith("Vega (alpha Lyr)\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("also     3 Lyr, HIP 91262\n", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_OfANearMiss_SuggestsIt()
    {
        using var session = new Session();
        var outcome = session.Run("find", "hart", "nebula");
        Assert.Equal(2, outcome.Code);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains("\"hart nebula\"", line, StringComparison.Ordinal);
        Assert.Contains("Heart Nebula", line, StringComparison.Ordinal);
    }
}
