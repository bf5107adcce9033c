namespace Framing.Workshop.Tests;

/// <summary>Frames of the real sky that may lie beside the checkout, or where FRAMING_FRAMES says; they are not part of it.</summary>
internal static class RealFrames
{
    /// <summary>The frames; none where there is no such folder.</summary>
    public static string[] All()
    {
        var folder =
            Environment.GetEnvironmentVariable("FRAMING_FRAMES")
            ?? Path.Combine(TestFolders.Root, "..", "shared", "frames");
        return Directory.Exists(folder) ? Directory.GetFiles(folder, "*.tiff") : [];
    }
}
