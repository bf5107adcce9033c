namespace Framing.Drawing;

/// <summary>Makes text fit.</summary>
internal static class TextFit
{
    /// <summary>The text, or as much of it as fits with an ellipsis behind.</summary>
    public static string Cut(string text, TextWeight weight, double size, double width)
    {
        if (Typefaces.Measure(text, weight, size) <= width)
        {
            return text;
        }

        for (var length = text.Length - 1; length > 0; length--)
        {
            // A pair of surrogates stays together.
            if (char.IsHighSurrogate(text[length - 1]))
            {
                continue;
            }

            var cut = text[..length].TrimEnd() + "…";
            if (Typefaces.Measure(cut, weight, size) <= width)
            {
                return cut;
            }
        }

        return string.Empty;
    }
}
