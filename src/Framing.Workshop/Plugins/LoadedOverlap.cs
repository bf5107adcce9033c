using System.Diagnostics.CodeAnalysis;
using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>An overlap strategy of a plugin, guarded: whatever the plugin does, a sound answer comes.</summary>
/// <remarks>Not for several threads at once.</remarks>
public sealed class LoadedOverlap : IOverlapStrategy, IDisposable
{
    private readonly LoadedPlugin<IOverlapStrategy> plugin;

    internal LoadedOverlap(FoundStrategy found, LoadedPlugin<IOverlapStrategy> plugin)
    {
        Found = found;
        this.plugin = plugin;
    }

    /// <summary>What was loaded.</summary>
    public FoundStrategy Found { get; }

    /// <summary>What the plugin did wrong when it was asked last; null when it answered in order or refused in words.</summary>
    public PluginFault? Fault { get; private set; }

    /// <summary>Asks the plugin.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>
    /// The plugin's answer; a refusal that names the plugin when it threw, answered nothing, or answered an overlap that is
    /// negative, not finite, or as large as the panel.
    /// </returns>
    /// <exception cref="ObjectDisposedException">The strategy was put away.</exception>
    [SuppressMessage(
        "Design",
        "CA1031:Do not catch general exception types",
        Justification = "A plugin may throw anything; it is named in one line and the rest works on."
    )]
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var strategy = plugin.Strategy;
        Fault = null;
        try
        {
            return strategy.Choose(question) switch
            {
                null => Wrong("gave no answer"),
                { Overlap: null } refusal => OverlapAnswer.Refuse(
                    Words(refusal.Reason, "refused without a reason")
                ),
                { Overlap: { } overlap } answer => OutOfRange(overlap, question.Rig.Field)
                    is { } problem
                    ? Wrong(problem)
                    : OverlapAnswer.Share(overlap, Words(answer.Reason, Found.Summary)),
            };
        }
        catch (Exception exception)
        {
            return Wrong(OneLine.Of(exception));
        }
    }

    /// <summary>Lets go of the plugin.</summary>
    public void Dispose() => plugin.Dispose();

    private static string Words(string? reason, string otherwise) =>
        OneLine.Of(reason) is { Length: > 0 } line ? line : otherwise;

    private static string? OutOfRange(PanelOverlap overlap, FieldShape field) =>
        OutOfRange(overlap.AlongWidth, field.TangentWidth, "width")
        ?? OutOfRange(overlap.AlongHeight, field.TangentHeight, "height");

    private static string? OutOfRange(double overlap, double panel, string side) =>
        overlap >= 0.0 && overlap < panel
            ? null
            : FormattableString.Invariant(
                $"answered an overlap of {Arcminutes(overlap):0.##} arcmin along the {side}; it is 0 or more and less than the panel's {Arcminutes(panel):0.##}"
            );

    private static double Arcminutes(double tangent) => tangent * (60.0 * 180.0 / Math.PI);

    private OverlapAnswer Wrong(string problem)
    {
        Fault = new(Found.File, Found.Name, problem);
        return OverlapAnswer.Refuse(Fault.Line);
    }
}
