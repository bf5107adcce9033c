using System.Diagnostics.CodeAnalysis;

namespace Framing.Sky;

/// <summary>What came of reading a text: a value, or one line that says what is wrong with it.</summary>
/// <typeparam name="T">What the text stands for.</typeparam>
/// <remarks><c>default(Reading&lt;T&gt;)</c> is a refusal: nothing was read.</remarks>
public readonly struct Reading<T>
    where T : struct
{
    private readonly T value;
    private readonly string? error;

    private Reading(bool succeeded, T value, string? error)
    {
        Succeeded = succeeded;
        this.value = value;
        this.error = error;
    }

    /// <summary>True when there is a value.</summary>
    public bool Succeeded { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">The text was refused; the message is <see cref="Error"/>.</exception>
    public T Value => Succeeded ? value : throw new InvalidOperationException(Error);

    /// <summary>
    /// One line without a full stop: which part, what it says, what would be right. Null when there is a value.
    /// </summary>
    public string? Error => Succeeded ? null : error ?? "nothing was read";

    /// <summary>Gives the value or the refusal.</summary>
    /// <param name="value">The value; meaningless when the answer is false.</param>
    /// <param name="error">What is wrong; null when the answer is true.</param>
    /// <returns>True when there is a value.</returns>
    public bool TryGet(out T value, [NotNullWhen(false)] out string? error)
    {
        value = this.value;
        error = Error;
        return Succeeded;
    }

    internal static Reading<T> Of(T value) => new(true, value, null);

    internal static Reading<T> Refused(string error) => new(false, default, error);
}
