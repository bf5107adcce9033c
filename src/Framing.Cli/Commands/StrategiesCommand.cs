using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Framing.Cli.Terminals;
using Framing.Strategies;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Lists the strategies found, from which plugin, with their settings.</summary>
internal static class StrategiesCommand
{
    public static Command Make(Terminal terminal)
    {
        var plugins = CommonOptions.Plugins();
        var json = CommonOptions.Json();
        var command = new Command(
            "strategies",
            "The rotation and overlap strategies found, from which plugin, with their settings."
        )
        {
            plugins,
            json,
        };
        command.SetAction(parsed =>
        {
            var shelf = PluginFolders.Open(terminal, parsed.GetValue(plugins));
            if (parsed.GetValue(json))
            {
                JsonOutput.Write(terminal, writer => Document(writer, shelf));
            }
            else
            {
                Table(terminal.Output, shelf);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static void Table(TextWriter output, PluginShelf shelf)
    {
        foreach (var kind in Enum.GetValues<StrategyKind>())
        {
            output.WriteLine(
                kind == StrategyKind.Rotation
                    ? "How the camera is turned: [rotation] strategy = …"
                    : "How much neighbours share: [mosaic] overlap = …"
            );
            foreach (var strategy in shelf.Strategies.Where(strategy => strategy.Kind == kind))
            {
                output.WriteLine($"  {strategy.Name, -22} {strategy.Summary}  [{strategy.Plugin}]");
                foreach (var setting in strategy.Settings)
                {
                    output.WriteLine($"      {setting.Name} = {Described(setting)}");
                }
            }

            output.WriteLine();
        }
    }

    private static string Described(StrategySettingAttribute setting)
    {
        var allowed = StrategySettingsReader.Wanted(setting);
        var value = setting.Default is null ? "must be given" : $"{setting.Default} unless given";
        return $"{allowed}; {value}: {setting.Summary}";
    }

    private static void Document(Utf8JsonWriter writer, PluginShelf shelf)
    {
        writer.WriteStartArray("strategies");
        foreach (var strategy in shelf.Strategies)
        {
            writer.WriteStartObject();
            writer.WriteString("name", strategy.Name);
            writer.WriteString(
                "kind",
                strategy.Kind == StrategyKind.Rotation ? "rotation" : "overlap"
            );
            writer.WriteString("summary", strategy.Summary);
            writer.WriteString("plugin", strategy.Plugin);
            writer.WriteString("contract", strategy.ContractVersion.ToString());
            writer.WriteStartArray("settings");
            foreach (var setting in strategy.Settings)
            {
                Setting(writer, setting);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("faults");
        foreach (var fault in shelf.Faults)
        {
            writer.WriteStringValue(fault.Line);
        }

        writer.WriteEndArray();
    }

    private static void Setting(Utf8JsonWriter writer, StrategySettingAttribute setting)
    {
        writer.WriteStartObject();
        writer.WriteString("name", setting.Name);
        writer.WriteString("kind", setting.Kind.ToString().ToLower(CultureInfo.InvariantCulture));
        writer.WriteString("default", setting.Default);
        Bound(writer, "least", setting.Least);
        Bound(writer, "most", setting.Most);
        Bound(writer, "below", setting.Below);
        writer.WriteString("choices", setting.Choices);
        writer.WriteString("summary", setting.Summary);
        writer.WriteEndObject();
    }

    private static void Bound(Utf8JsonWriter writer, string name, double value)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumber(name, value);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
