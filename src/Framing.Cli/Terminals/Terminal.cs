namespace Framing.Cli.Terminals;

/// <summary>What a command talks to.</summary>
/// <param name="Output">Standard output: the summary, or with <c>--json</c> exactly one document.</param>
/// <param name="Error">Standard error: messages.</param>
/// <param name="Time">Tells what day it is when a plan does not say.</param>
/// <param name="Folder">The folder that relative paths start from.</param>
internal sealed record Terminal(
    TextWriter Output,
    TextWriter Error,
    TimeProvider Time,
    string Folder
)
{
    /// <summary>The whole path of a file or folder named by the user.</summary>
    public string PathOf(string path) => Path.GetFullPath(path, Folder);
}
