using System.Reflection;
using System.Runtime.Loader;

namespace Framing.Workshop;

/// <summary>One plugin's own place for assemblies: what it brings stays its own, the contract is the program's.</summary>
internal sealed class PluginContext : AssemblyLoadContext
{
    private static readonly HashSet<string> OfTheProgram = new(StringComparer.OrdinalIgnoreCase)
    {
        "Framing.Strategies",
        "Framing.Mosaics",
        "Framing.Sky",
        "NetTopologySuite",
    };

    private readonly AssemblyDependencyResolver resolver;

    public PluginContext(string pluginFile)
        : base(Path.GetFileNameWithoutExtension(pluginFile), isCollectible: true) =>
        resolver = new(pluginFile);

    /// <summary>True for the contract and what can be seen through it: a copy in a plugin's folder is never taken.</summary>
    public static bool IsOfTheProgram(string? assemblyName) =>
        assemblyName is not null && OfTheProgram.Contains(assemblyName);

    protected override Assembly? Load(AssemblyName assemblyName) =>
        !IsOfTheProgram(assemblyName.Name)
        && resolver.ResolveAssemblyToPath(assemblyName) is { } path
            ? LoadFromAssemblyPath(path)
            : null;

    protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
        resolver.ResolveUnmanagedDllToPath(unmanagedDllName) is { } path
            ? LoadUnmanagedDllFromPath(path)
            : 0;
}
