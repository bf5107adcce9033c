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

    private LoadedPlugin(PluginContext context, TStrategy strategy)
    {
        this.context = context;
        this.strategy = strategy;
    }

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
                return new(own, strategy);
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
