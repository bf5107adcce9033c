using Framing.Planning;

namespace Framing.Workshop;

/// <summary>Learns what a key really does, and keeps it in the mount's file.</summary>
public static class KeysJob
{
    private static readonly string[] Directions = ["east", "west", "north", "south"];

    /// <summary>Does the job.</summary>
    /// <param name="order">What is wanted.</param>
    /// <returns>What the key does, or why that cannot be told.</returns>
    /// <exception cref="InputException">The plan, a frame, the key or the speed cannot be used.</exception>
    public static KeysDelivery Run(KeysOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var file = PlanFileReader.Read(order.PlanPath);
        var handling = file.Mount.Handling;
        var press = new KeyPress(
            Towards(order.Pressed, handling.Keys),
            order.Speed is { } label ? Speed(label, handling) : null,
            order.Seconds
        );
        var before = Sight(order, file, order.Before);
        var after = Sight(order, file, order.After);
        var messages = new List<string>();
        if (before is not { Seen: { } first } || after is not { Seen: { } second })
        {
            var reason = before.Seen is null
                ? $"{order.Before}: {before.Reason}"
                : $"{order.After}: {after.Reason}";
            return new(new(null, reason), handling, messages);
        }

        if (second.At <= first.At)
        {
            throw new InputException(
                FormattableString.Invariant(
                    $"{order.After} was taken at {second.At:yyyy-MM-dd HH:mm:ss} UTC, not after {order.Before} ({first.At:yyyy-MM-dd HH:mm:ss}); name the frame before the key was held first"
                )
            );
        }

        var result = KeyTrial.Judge(handling, press, first, second);
        if (result.Finding is { } finding)
        {
            MountFile.Keep(order.PlanPath, handling, finding.Learned, messages);
        }

        return new(result, handling, messages);
    }

    private static SightedFrame Sight(KeysOrder order, PlanFile file, string name)
    {
        var sight = FrameSight.Read(
            name,
            Path.GetFullPath(name, order.WorkingFolder),
            file.Rig,
            DateTime.UnixEpoch,
            null
        );
        return sight is { Seen: not null, HasTime: false }
            ? throw new InputException(
                $"{name}: the frame does not say when it was taken (DATE-OBS); the rate of a key cannot be told without"
            )
            : sight;
    }

    private static MountDirection Towards(string pressed, MountKeys keys)
    {
        var index = Array.IndexOf(Directions, pressed);
        if (index < 0)
        {
            index = Array.IndexOf([keys.East, keys.West, keys.North, keys.South], pressed);
        }

        return index switch
        {
            0 => MountDirection.East,
            1 => MountDirection.West,
            2 => MountDirection.North,
            3 => MountDirection.South,
            _ => throw new InputException(
                NearestName.Among(pressed, Directions) is { } near
                    ? $"--pressed: there is no key \"{pressed}\"; did you mean {near}?"
                    : $"--pressed: there is no key \"{pressed}\"; give east, west, north or south, or what is printed on it: {keys.East} {keys.West} {keys.North} {keys.South}"
            ),
        };
    }

    private static MountSpeed Speed(string label, MountHandling handling) =>
        handling.Speeds.FirstOrDefault(speed =>
            string.Equals(speed.Label, label, StringComparison.Ordinal)
        )
        ?? throw new InputException(
            $"--speed: the mount has no speed \"{label}\"; it has {string.Join(", ", handling.Speeds.Select(speed => speed.Label))}"
        );
}
