using System.Globalization;

namespace Framing.Workshop;

/// <summary>A plan file that cannot be used, with everything that was found wrong in it.</summary>
/// <remarks>The message is one line, ready to print: the first finding, and how many more there are.</remarks>
public sealed class PlanFileException : InputException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="errors">One or more findings, in the order of the file.</param>
    /// <exception cref="ArgumentException">The list is empty.</exception>
    public PlanFileException(IReadOnlyList<PlanFileError> errors)
        : base(Describe(errors)) => Errors = [.. errors];

    /// <summary>Makes the exception for a plan as a whole.</summary>
    /// <param name="message">What is wrong and what would be right.</param>
    public PlanFileException(string message)
        : this([Whole(message)]) { }

    /// <summary>Makes the exception for a plan as a whole.</summary>
    /// <param name="message">What is wrong and what would be right.</param>
    /// <param name="inner">What led to it.</param>
    public PlanFileException(string message, Exception inner)
        : base(Whole(message).Line, inner) => Errors = [Whole(message)];

    /// <summary>Makes the exception without a reason of its own.</summary>
    public PlanFileException()
        : this("it cannot be used") { }

    /// <summary>What is wrong, in the order of the file.</summary>
    public IReadOnlyList<PlanFileError> Errors { get; }

    private static PlanFileError Whole(string message) =>
        new(new("the plan", 0, 0), "", null, message);

    private static string Describe(IReadOnlyList<PlanFileError> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        return errors.Count switch
        {
            0 => throw new ArgumentException("A refusal needs a reason.", nameof(errors)),
            1 => errors[0].Line,
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"{errors[0].Line} (and {errors.Count - 1} more)"
            ),
        };
    }
}
