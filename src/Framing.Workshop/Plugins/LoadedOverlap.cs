using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>An overlap strategy of a plugin, guarded: whatever the plugin does, a sound answer comes.</summary>
/// <remarks>Not for several threads at once.</remarks>
internal sealed class LoadedOverlap : IOverlapStrategy, IDisposable
{
    private readonly LoadedPlugin<IOverlapStrategy> plugin;

    internal LoadedOverlap(LoadedPlugin<IOverlapStrategy> plugin) => this.plugin = plugin;

    /// <summary>What was loaded.</summary>
    public FoundStrategy Found => plugin.Found;

    /// <summary>What the plugin did wrong when it was asked last; null when it answered in order or refused in words.</summary>
    public PluginFault? Fault => plugin.Fault;

    /// <summary>Asks the plugin.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>
    /// The plugin's answer; a refusal that names the plugin when it threw, answered nothing, or answered an overlap that is
    /// negative, not finite, or as large as the panel.
    /// </returns>
    /// <exception cref="ObjectDisposedException">The strategy was put away.</exception>
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var answer = plugin.Ask(
            strategy => strategy.Choose(question),
            answer =>
                answer.Overlap is { } overlap ? OutOfRange(overlap, question.Rig.Field) : null,
            OverlapAnswer.Refuse
        );
        return Fault is not null ? answer
            : answer.Overlap is { } overlap
                ? OverlapAnswer.Share(overlap, OneLine.Of(answer.Reason, Found.Summary))
            : OverlapAnswer.Refuse(OneLine.Of(answer.Reason, "refused without a reason"));
    }

    /// <summary>Lets go of the plugin.</summary>
    public void Dispose() => plugin.Dispose();

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
}
