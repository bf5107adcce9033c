using System.Reflection;

namespace Framing.Workshop;

/// <summary>The program's name and version, as reports carry it.</summary>
public static class ProgramVersion
{
    /// <summary>For example "framing 1.2.3".</summary>
    public static string Text { get; } =
        "framing "
        + (
            typeof(ProgramVersion)
                .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()
                ?.InformationalVersion
            ?? "0.0.0"
        );
}
