namespace Framing.Cli.Terminals;

/// <summary>The exit codes of every command.</summary>
internal static class ExitCode
{
    /// <summary>Done, perhaps with warnings.</summary>
    public const int Done = 0;

    /// <summary>A fault of the program.</summary>
    public const int Fault = 1;

    /// <summary>The call or the input is wrong.</summary>
    public const int WrongInput = 2;

    /// <summary>The input is sound, but what is asked for cannot be.</summary>
    public const int CannotBe = 3;
}
