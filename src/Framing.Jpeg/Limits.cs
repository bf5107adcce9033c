using System.Runtime.InteropServices;

namespace Framing.Jpeg;

/// <summary>What the system lets this process have; it can only be made less.</summary>
internal static partial class Limits
{
    // Numbers of Linux, <sys/resource.h>.
    private const int ProcessorSeconds = 0;
    private const int CoreBytes = 4;
    private const int AddressBytes = 9;

    /// <summary>Limits further memory and processor time, where the system is Linux; elsewhere the caller watches alone.</summary>
    /// <param name="bytes">Memory beyond what is held now.</param>
    /// <param name="seconds">Processor time, whole seconds.</param>
    public static void Set(long bytes, long seconds)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        // The first number of statm is the size of the address space in pages; the runtime has set much of it aside unused.
        var pages = File.ReadAllText("/proc/self/statm").Split(' ')[0];
        var now =
            long.Parse(pages, System.Globalization.CultureInfo.InvariantCulture)
            * Environment.SystemPageSize;
        Set(AddressBytes, now + bytes);
        Set(ProcessorSeconds, seconds);
        Set(CoreBytes, 0);
    }

    private static void Set(int resource, long most)
    {
        var limit = new Limit { Soft = (nuint)most, Hard = (nuint)most };
        // Where the system refuses, the caller's watch is still there.
        _ = SetLimit(resource, in limit);
    }

    [LibraryImport("libc", EntryPoint = "setrlimit")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetLimit(int resource, in Limit limit);

    [StructLayout(LayoutKind.Sequential)]
    private struct Limit
    {
        public nuint Soft;
        public nuint Hard;
    }
}
