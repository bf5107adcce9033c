using System.Globalization;
using Framing.Cli.Terminals;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Tells what a rehearsal made, without betraying what is to be found out.</summary>
internal static class RehearseText
{
    public static int Tell(
        Terminal terminal,
        RehearsalDelivery delivery,
        RehearsalOrder order,
        bool json
    )
    {
        foreach (var message in delivery.Messages)
        {
            terminal.Error.WriteLine(message);
        }

        if (json)
        {
            Document(terminal, delivery);
            return ExitCode.Done;
        }

        foreach (var frame in delivery.Frames)
        {
            terminal.Output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Shown(terminal, frame.File)}: {order.ExposureSeconds:0.###} s at {frame.Start:yyyy-MM-dd HH:mm:ss} UTC{(frame.Panel is { } panel ? $", panel {panel} typed" : "")}"
                )
            );
        }

        var hidden = delivery.ErrorPath is { } path ? $", and {Shown(terminal, path)}" : "";
        terminal.Output.WriteLine(
            $"The truth lies beside each frame (.truth.json{hidden}): look when you have found it yourself."
        );
        return ExitCode.Done;
    }

    private static void Document(Terminal terminal, RehearsalDelivery delivery) =>
        JsonOutput.Write(
            terminal,
            json =>
            {
                json.WriteStartArray("frames");
                foreach (var frame in delivery.Frames)
                {
                    json.WriteStartObject();
                    json.WriteString("file", frame.File);
                    json.WriteString("truth", frame.TruthFile);
                    if (frame.Panel is { } panel)
                    {
                        json.WriteNumber("panel", panel);
                    }
                    else
                    {
                        json.WriteNull("panel");
                    }

                    json.WriteString(
                        "startedAt",
                        frame.Start.ToString(
                            "yyyy-MM-dd'T'HH:mm:ss.fff'Z'",
                            CultureInfo.InvariantCulture
                        )
                    );
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteString("errorFile", delivery.ErrorPath);
                json.WriteBoolean("newEvening", delivery.IsNewEvening);
            }
        );

    private static string Shown(Terminal terminal, string path) =>
        Path.GetRelativePath(terminal.Folder, path);
}
