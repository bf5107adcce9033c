using System.Reflection;

namespace Framing.Workshop;

/// <summary>Makes one line of what a plugin says or throws.</summary>
internal static class OneLine
{
    private const int Longest = 240;

    /// <summary>A text without line breaks, control characters and doubled blanks, cut where it gets too long to read.</summary>
    public static string Of(string? text)
    {
        var line = new System.Text.StringBuilder();
        foreach (var c in text ?? "")
        {
            var blank = char.IsWhiteSpace(c) || char.IsControl(c);
            if (!blank)
            {
                line.Append(c);
            }
            else if (line.Length > 0 && line[^1] != ' ')
            {
                line.Append(' ');
            }
        }

        return line.Length > Longest
            ? line.ToString(0, Longest) + "…"
            : line.ToString().TrimEnd(' ');
    }

    /// <summary>The same, with other words where nothing is left.</summary>
    public static string Of(string? text, string otherwise) =>
        Of(text) is { Length: > 0 } line ? line : otherwise;

    /// <summary>What an exception from a plugin says, wrappers taken off.</summary>
    public static string Of(Exception exception)
    {
        while (
            exception is TargetInvocationException or TypeInitializationException
            && exception.InnerException is { } inner
        )
        {
            exception = inner;
        }

        return exception switch
        {
            FileNotFoundException { FileName: { } missing } when IsDisplayName(missing) =>
                $"needs {Of(ShortName(missing))}, which is not beside it",
            FileLoadException { FileName: { } wrong } when IsDisplayName(wrong) =>
                $"needs {Of(ShortName(wrong))}, which cannot be loaded",
            BadImageFormatException => "cannot be loaded: it is damaged or for another processor",
            TypeLoadException or MissingMemberException =>
                $"was built against other versions than this program has: {Of(exception.Message)}",
            _ => $"threw {exception.GetType().Name}: {Of(exception.Message)}",
        };
    }

    private static bool IsDisplayName(string name) =>
        name.Contains(", Version=", StringComparison.Ordinal);

    /// <summary>Name and version of an assembly's display name ("Name, Version=1.0.0.0, Culture=…").</summary>
    private static string ShortName(string displayName)
    {
        var name = new AssemblyName(displayName);
        return $"{name.Name} {name.Version}";
    }
}
