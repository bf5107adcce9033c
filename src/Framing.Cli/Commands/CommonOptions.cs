using System.CommandLine;

namespace Framing.Cli.Commands;

/// <summary>Options that several commands share.</summary>
internal static class CommonOptions
{
    public static Option<string?> Plugins()
    {
        var option = new Option<string?>("--plugins")
        {
            Description = "A folder with more strategy plugins.",
            HelpName = "DIR",
        };
        RefuseEmpty(option);
        return option;
    }

    /// <summary>Refuses an empty name: a script whose variable is not set would write or read somewhere else.</summary>
    public static void RefuseEmpty(Option<string?> option) =>
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var word }] && string.IsNullOrWhiteSpace(word))
            {
                result.AddError(
                    $"{option.Name}: the name is empty; give {option.Name} {option.HelpName}."
                );
            }
        });

    public static Option<bool> Json() =>
        new("--json") { Description = "Print exactly one JSON document instead of text." };
}
