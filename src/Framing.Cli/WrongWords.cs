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
            token.Type == TokenType.Argument && LooksLikeAnOption(token.Value)
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

        return $"{path}: {Lacking(parsed, command) ?? parsed.Errors[0].Message.ReplaceLineEndings(" ")}";
    }

    /// <summary>An option without its value or given twice, or a missing word; null where it is something else.</summary>
    private static string? Lacking(ParseResult parsed, Command command)
    {
        foreach (var result in parsed.CommandResult.Children.OfType<OptionResult>())
        {
            var option = result.Option;
            if (result.IdentifierTokenCount > 1 && option.Arity.MaximumNumberOfValues < 2)
            {
                return FormattableString.Invariant(
                    $"{option.Name} is given {result.IdentifierTokenCount} times; give it once."
                );
            }

            if (option.Arity.MinimumNumberOfValues > result.Tokens.Count)
            {
                return $"{option.Name} needs a value: {option.Name} {option.HelpName}.";
            }
        }

        var missing = command.Arguments.FirstOrDefault(argument =>
            argument.Arity.MinimumNumberOfValues > 0
            && parsed.GetResult(argument) is not { Tokens.Count: > 0 }
        );
        return missing is null ? null : $"{missing.Name} is missing. {missing.Description}";
    }

    /// <summary>A dash, and then no number: −5 is a coordinate.</summary>
    private static bool LooksLikeAnOption(string word) =>
        word is ['-', '-' or (>= 'a' and <= 'z') or (>= 'A' and <= 'Z'), ..] && word != "--";

    public static string UnknownOption(string word, Command command) =>
        Unknown(word, command, "framing " + command.Name);

    private static string Unknown(string word, Command command, string path)
    {
        if (word.StartsWith('-'))
        {
            var options = command.Options.Select(option => option.Name).ToList();
            if (options.Contains(word, StringComparer.Ordinal))
            {
                return $"{path}: the option before {word} needs a value; {word} stands in its place.";
            }

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
