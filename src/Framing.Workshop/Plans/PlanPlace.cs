using System.Globalization;

namespace Framing.Workshop;

/// <summary>A place in a text file.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Line">The line, counted from 1; 0 when the whole file is meant.</param>
/// <param name="Column">The column, counted from 1; 0 when the whole file is meant.</param>
public readonly record struct PlanPlace(string File, int Line, int Column)
{
    /// <summary>The place as compilers write it: <c>plan.toml:4:19</c>, or the file alone.</summary>
    public override string ToString() =>
        Line == 0 ? File : string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
}
