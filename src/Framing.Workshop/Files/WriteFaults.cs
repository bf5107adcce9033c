namespace Framing.Workshop;

/// <summary>Says in one line why something cannot be written.</summary>
internal static class WriteFaults
{
    /// <summary>Does something with the disk.</summary>
    /// <param name="shown">What is written, as the user named it.</param>
    /// <param name="action">What to do.</param>
    /// <exception cref="InputException">The disk refuses.</exception>
    public static void Guard(string shown, Action action)
    {
        try
        {
            action();
        }
        catch (Exception fault)
            when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new InputException($"{shown}: cannot be written, {Reason(fault)}", fault);
        }
    }

    /// <summary>Tidies up; what cannot be tidied stays, since the fault that led here is told already.</summary>
    public static void Forgive(Action action)
    {
        try
        {
            action();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Nothing better can be done than to leave it.
        }
    }

    private static string Reason(Exception fault) =>
        fault switch
        {
            UnauthorizedAccessException => "there is no permission to write there",
            PathTooLongException => "the name is too long",
            DirectoryNotFoundException => "the folder it should be in is not there",
            NotSupportedException => "the name is none that a file can have",
            _ => TomlTree.OneLine(fault.Message).TrimEnd('.'),
        };
}
