using System.Text.Json.Nodes;

namespace Framing.Web;

/// <summary>Everything that the page shows of a plan.</summary>
internal sealed record PlanAnswer
{
    /// <summary>Names this state; a change says which state it is made to.</summary>
    public required string Mark { get; init; }

    public required string FileName { get; init; }

    public required bool IsSaved { get; init; }

    public required bool WasRecovered { get; init; }

    public required string Text { get; init; }

    public required IReadOnlyList<SentencePart> Sentence { get; init; }

    /// <summary>report.json, as <c>framing plan --json</c> prints it.</summary>
    public required JsonNode Report { get; init; }

    /// <summary>The values that the editors start from.</summary>
    public required FormAnswer Form { get; init; }

    /// <summary>True when the plan names a site, so that there is a band of its nights.</summary>
    public required bool HasNights { get; init; }

    public required IReadOnlyList<string> Messages { get; init; }

    /// <summary>Panels that are ticked off.</summary>
    public required IReadOnlyList<int> Done { get; init; }
}
