using System.CommandLine;
using System.CommandLine.Parsing;
using Framing.Workshop;

namespace Framing.Cli;

/// <summary>Explains a command line that cannot be read, in one line that says what would be right.</summary>
internal static class WrongWords
{
    public static string Explain(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var path = command is RootCommand ? "framing" : "framing " + command.Name;
        var mistyped = parsed.Tokens.FirstOrDefault(token =>
            token.Type == TokenType.Argument
            && token.Value.StartsWith("--", StringComparison.Ordinal)
        );
        if (mistyped is not null)
        {
            return Unknown(mistyped.Value, command, path);
        }

        if (parsed.UnmatchedTokens.Count > 0)
        {
            return Unknown(parsed.UnmatchedTokens[0], command, path);
        }

        if (command is RootCommand)
        {
            return $"framing: no command given; the commands are {Names(command)}. «framing --help» explains them.";
        }

        return parsed.Errors[0].SymbolResult switch
        {
            OptionResult { Tokens.Count: 0 } option =>
                $"{path}: {option.Option.Name} needs a value; «{path} --help» shows which.",
            ArgumentResult { Tokens.Count: 0, Parent: CommandResult } argument =>
                $"{path}: {argument.Argument.Name} is missing; «{path} --help» shows what it takes.",
            _ => $"{path}: {parsed.Errors[0].Message.ReplaceLineEndings(" ")}",
        };
    }

    public static string UnknownOption(string word, Command command) =>
        Unknown(word, command, "framing " + command.Name);

    private static string Unknown(string word, Command command, string path)
    {
        if (word.StartsWith('-'))
        {
            var options = command.Options.Select(option => option.Name).ToList();
            var near = NearestName.Among(word, options);
            return $"{path}: there is no option {word}; "
                + (
                    near is null
                        ? $"the options are {string.Join(", ", options)}."
                        : $"did you mean {near}?"
                );
        }

        if (command is RootCommand)
        {
            var near = NearestName.Among(word, [.. command.Subcommands.Select(sub => sub.Name)]);
            return $"{path}: there is no command \"{word}\"; "
                + (near is null ? $"the commands are {Names(command)}." : $"did you mean {near}?");
        }

        return $"{path}: \"{word}\" is one word too many; «{path} --help» shows what it takes.";
    }

    private static string Names(Command command) =>
        string.Join(", ", command.Subcommands.Select(sub => sub.Name));
}
