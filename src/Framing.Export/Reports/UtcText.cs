using System.Globalization;

namespace Framing.Export;

/// <summary>Times as reports write them.</summary>
internal static class UtcText
{
    /// <summary>ISO 8601 to the second, with Z.</summary>
    public static string Of(DateTime utc) =>
        utc.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
}
