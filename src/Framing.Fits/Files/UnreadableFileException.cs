using System.Diagnostics.CodeAnalysis;

namespace Framing.Fits;

/// <summary>A file that cannot be read, said in one line: which file, where in it, what stands there, what would be right.</summary>
/// <remarks>
/// The only exception the doors of reading let out for bad input. The message is one line without control characters and
/// is meant for the person who gave the file.
/// </remarks>
[SuppressMessage(
    "Roslynator",
    "RCS1194:Implement exception constructors",
    Justification = "Without its facts the exception would say nothing."
)]
public sealed class UnreadableFileException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="file">The file as the caller named it.</param>
    /// <param name="where">The place in the file: a keyword, "header", "image data".</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What would be right, or what to do.</param>
    /// <param name="inner">The cause, when another exception told of it.</param>
    public UnreadableFileException(
        string file,
        string where,
        string found,
        string expected,
        Exception? inner = null
    )
        : base(
            // Of the file as a whole the place says nothing more.
            OneLine(
                where == "file"
                    ? $"{file}: {found}; {expected}."
                    : $"{file}: {where}: {found}; {expected}."
            ),
            inner
        )
    {
        File = file;
        Where = where;
        Found = found;
        Expected = expected;
    }

    /// <summary>The file as the caller named it.</summary>
    public string File { get; }

    /// <summary>The place in the file.</summary>
    public string Where { get; }

    /// <summary>What stands there.</summary>
    public string Found { get; }

    /// <summary>What would be right, or what to do.</summary>
    public string Expected { get; }

    private static string OneLine(string text) =>
        string.Create(
            text.Length,
            text,
            static (line, source) =>
            {
                for (var i = 0; i < line.Length; i++)
                {
                    line[i] = char.IsControl(source[i]) ? '?' : source[i];
                }
            }
        );
}
