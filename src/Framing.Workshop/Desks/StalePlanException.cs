namespace Framing.Workshop;

/// <summary>A change was made to a plan that somebody else has changed in the meantime: nothing was lost, nothing was done.</summary>
public sealed class StalePlanException : InputException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened and what to do.</param>
    public StalePlanException(string message)
        : base(message) { }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened and what to do.</param>
    /// <param name="inner">What led to it.</param>
    public StalePlanException(string message, Exception inner)
        : base(message, inner) { }

    /// <summary>Makes the exception for a change made elsewhere.</summary>
    public StalePlanException()
        : this(
            "The plan has been changed elsewhere; what you see now is the newest. Make your change again."
        ) { }
}
