using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>A rotation strategy of a plugin, guarded: whatever the plugin does, a sound answer comes.</summary>
/// <remarks>Not for several threads at once.</remarks>
internal sealed class LoadedRotation : IRotationStrategy, IDisposable
{
    private readonly LoadedPlugin<IRotationStrategy> plugin;

    internal LoadedRotation(LoadedPlugin<IRotationStrategy> plugin) => this.plugin = plugin;

    /// <summary>What was loaded.</summary>
    public FoundStrategy Found => plugin.Found;

    /// <summary>What the plugin did wrong when it was asked last; null when it answered in order or refused in words.</summary>
    public PluginFault? Fault => plugin.Fault;

    /// <summary>Asks the plugin.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The plugin's answer; a refusal that names the plugin when it threw or answered nothing.</returns>
    /// <exception cref="ObjectDisposedException">The strategy was put away.</exception>
    public RotationAnswer Choose(RotationQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var answer = plugin.Ask(
            strategy => strategy.Choose(question),
            answer =>
                answer.Angle is { } angle && !double.IsFinite(angle.Radians)
                    ? "answered an angle that is not a number"
                    : null,
            RotationAnswer.Refuse
        );
        return Fault is not null ? answer
            : answer.Angle is { } angle
                ? RotationAnswer.Turn(angle, OneLine.Of(answer.Reason, Found.Summary))
            : RotationAnswer.Refuse(OneLine.Of(answer.Reason, "refused without a reason"));
    }

    /// <summary>Lets go of the plugin.</summary>
    public void Dispose() => plugin.Dispose();
}
