using System.Globalization;
using Framing.Catalogue;

namespace Framing.Cli.Commands;

/// <summary>Kinds of objects in words.</summary>
internal static class ObjectWords
{
    /// <summary>Such as "emission nebula".</summary>
    public static string Kind(ObjectType type) =>
        string.Concat(
                type.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? " " + c : c.ToString())
            )
            .ToLower(CultureInfo.InvariantCulture);
}
