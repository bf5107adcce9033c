using System.Text;

namespace Framing.Export;

/// <summary>Breaks texts into lines for a screen.</summary>
internal static class Lines
{
    /// <summary>The longest line, unless a single word is longer.</summary>
    public const int Width = 96;

    /// <summary>Breaks a text between words; further lines stand under the first word.</summary>
    public static void Wrap(StringBuilder text, string head, string body)
    {
        var indent = new string(' ', head.Length);
        var line = new StringBuilder(head);
        foreach (var word in body.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > head.Length && line.Length + word.Length > Width)
            {
                text.Append(line.ToString().TrimEnd()).Append('\n');
                line.Clear().Append(indent);
            }

            line.Append(word).Append(' ');
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}
