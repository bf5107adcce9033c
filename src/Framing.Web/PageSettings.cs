using System.Net;
using Framing.Workshop;

namespace Framing.Web;

/// <summary>What the page serves, and where.</summary>
public sealed record PageSettings
{
    /// <summary>The plan on the desk.</summary>
    public required PlanDesk Desk { get; init; }

    /// <summary>The strategies there are.</summary>
    public required PluginShelf Shelf { get; init; }

    /// <summary>The address on which the page answers; this machine alone unless told otherwise.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>The port; 0 for one that is free.</summary>
    public int Port { get; init; }

    /// <summary>True when the page answers on this machine alone: then no code is asked.</summary>
    public bool IsLocal => IPAddress.IsLoopback(Address);
}
