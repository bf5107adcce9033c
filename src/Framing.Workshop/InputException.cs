namespace Framing.Workshop;

/// <summary>The call or the input is wrong: one line that says what, where, which value, and what would be right.</summary>
public class InputException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">The line to print.</param>
    public InputException(string message)
        : base(message) { }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">The line to print.</param>
    /// <param name="inner">What led to it.</param>
    public InputException(string message, Exception inner)
        : base(message, inner) { }

    /// <summary>Makes the exception without a line of its own.</summary>
    public InputException()
        : this("The input is wrong.") { }
}
