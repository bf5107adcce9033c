using System.Diagnostics.CodeAnalysis;
using System.Reflection;

namespace Framing.Workshop;

/// <summary>A strategy's object in its plugin's own context, and the way out again.</summary>
/// <typeparam name="TStrategy">The contract's interface.</typeparam>
internal sealed class LoadedPlugin<TStrategy> : IDisposable
    where TStrategy : class
{
    private readonly PluginContext context;
    private TStrategy? strategy;

    private LoadedPlugin(FoundStrategy found, PluginContext context, TStrategy strategy)
    {
        Found = found;
        this.context = context;
        this.strategy = strategy;
    }

    /// <summary>What was loaded.</summary>
    public FoundStrategy Found { get; }

    /// <summary>What the plugin did wrong when it was asked last; null when it answered in order or refused in words.</summary>
    public PluginFault? Fault { get; private set; }

    /// <summary>The strategy.</summary>
    /// <exception cref="ObjectDisposedException">It was put away.</exception>
    public TStrategy Strategy
    {
        get
        {
            ObjectDisposedException.ThrowIf(strategy is null, this);
            return strategy;
        }
    }

    /// <summary>Loads a plugin and makes one strategy of it.</summary>
    /// <param name="found">The strategy to make.</param>
    /// <param name="problem">What is wrong, in one line; null when the strategy was made.</param>
    /// <returns>The strategy, or null.</returns>
    [SuppressMessage(
        "Design",
        "CA1031:Do not catch general exception types",
        Justification = "A plugin may throw anything; it is named in one line and the rest works on."
    )]
    public static LoadedPlugin<TStrategy>? TryMake(FoundStrategy found, out string? problem)
    {
        PluginContext? own = null;
        try
        {
            own = new(found.File);
            var type = own.LoadFromAssemblyPath(found.File)
                .GetType(found.TypeName, throwOnError: true)!;
            if (Activator.CreateInstance(type) is TStrategy strategy)
            {
                problem = null;
                return new(found, own, strategy);
            }

            problem = $"{found.TypeName} does not implement {typeof(TStrategy).Name}";
        }
        catch (Exception exception)
        {
            problem = OneLine.Of(exception);
        }

        own?.Unload();
        return null;
    }

    /// <summary>Asks the strategy; whatever it does, an answer comes.</summary>
    /// <param name="ask">Puts the question.</param>
    /// <param name="problemOf">What is wrong with an answer; null when nothing is.</param>
    /// <param name="refuse">Makes a refusal of a reason.</param>
    /// <returns>The answer; a refusal that names the plugin when it threw, answered nothing, or answered wrongly.</returns>
    /// <exception cref="ObjectDisposedException">The strategy was put away.</exception>
    [SuppressMessage(
        "Design",
        "CA1031:Do not catch general exception types",
        Justification = "A plugin may throw anything; it is named in one line and the rest works on."
    )]
    public TAnswer Ask<TAnswer>(
        Func<TStrategy, TAnswer?> ask,
        Func<TAnswer, string?> problemOf,
        Func<string, TAnswer> refuse
    )
        where TAnswer : class
    {
        var asked = Strategy;
        Fault = null;
        string? problem;
        try
        {
            var answer = ask(asked);
            problem = answer is null ? "gave no answer" : problemOf(answer);
            if (problem is null)
            {
                return answer!;
            }
        }
        catch (Exception exception)
        {
            problem = OneLine.Of(exception);
        }

        Fault = new(Found.File, Found.Name, problem);
        return refuse(Fault.Line);
    }

    /// <summary>Lets go of the strategy; its assemblies leave memory when nothing refers to them any more.</summary>
    public void Dispose()
    {
        if (strategy is not null)
        {
            strategy = null;
            context.Unload();
        }
    }
}
