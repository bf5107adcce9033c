using System.Diagnostics.CodeAnalysis;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>A rotation strategy of a plugin, guarded: whatever the plugin does, a sound answer comes.</summary>
/// <remarks>Not for several threads at once.</remarks>
public sealed class LoadedRotation : IRotationStrategy, IDisposable
{
    private readonly LoadedPlugin<IRotationStrategy> plugin;

    internal LoadedRotation(FoundStrategy found, LoadedPlugin<IRotationStrategy> plugin)
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
    /// <returns>The plugin's answer; a refusal that names the plugin when it threw or answered nothing.</returns>
    /// <exception cref="ObjectDisposedException">The strategy was put away.</exception>
    [SuppressMessage(
        "Design",
        "CA1031:Do not catch general exception types",
        Justification = "A plugin may throw anything; it is named in one line and the rest works on."
    )]
    public RotationAnswer Choose(RotationQuestion question)
    {
        var strategy = plugin.Strategy;
        Fault = null;
        try
        {
            return strategy.Choose(question) switch
            {
                null => Wrong("gave no answer"),
                { Angle: null } refusal => RotationAnswer.Refuse(
                    Words(refusal.Reason, "refused without a reason")
                ),
                { Angle: { } angle } answer => double.IsFinite(angle.Radians)
                    ? RotationAnswer.Turn(angle, Words(answer.Reason, Found.Summary))
                    : Wrong("answered an angle that is not a number"),
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

    private RotationAnswer Wrong(string problem)
    {
        Fault = new(Found.File, Found.Name, problem);
        return RotationAnswer.Refuse(Fault.Line);
    }
}
