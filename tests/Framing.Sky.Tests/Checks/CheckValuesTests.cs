namespace Framing.Sky.Tests;

/// <summary>Every entry of the files of check values: published examples and reference values, each with its source beside it.</summary>
public sealed class CheckValuesTests
{
    private static readonly Dictionary<
        string,
        (CheckFile File, Dictionary<string, Action<CheckValue>> Handlers)
    > Topics = new(StringComparer.Ordinal)
    {
        ["of date"] = (new("coordinates.checks.json", "crd-"), OfDateChecks.Handlers),
        ["optics"] = (new("optics.checks.json"), OpticsChecks.Handlers),
        ["projection"] = (new("projection.checks.json"), ProjectionChecks.Handlers),
        ["text"] = (new("coordinates.checks.json", "fmt-"), TextChecks.Handlers),
    };

    public static TheoryData<string, string> Entries()
    {
        var rows = new TheoryData<string, string>();
        foreach (var (topic, (file, _)) in Topics)
        {
            foreach (var id in file.Ids)
            {
                rows.Add(topic, id);
            }
        }

        return rows;
    }

    [Theory]
    [InlineData("of date", 14)]
    [InlineData("optics", 10)]
    [InlineData("projection", 22)]
    [InlineData("text", 14)]
    public void File_AsCopied_IsHandledWhole(string topic, int count)
    {
        var (file, handlers) = Topics[topic];
        Assert.Equal(count, file.Count);
        Assert.Equal(
            file.Ids.Order(StringComparer.Ordinal),
            handlers.Keys.Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void Check(string topic, string id)
    {
        var (file, handlers) = Topics[topic];
        var check = file[id];
        handlers[id](check);
        check.Finish();
    }
}
