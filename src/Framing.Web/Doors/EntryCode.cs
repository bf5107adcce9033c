using System.Security.Cryptography;
using System.Text;

namespace Framing.Web;

/// <summary>The one-time code that lets a telephone in, and the cookies that it is exchanged for.</summary>
/// <remarks>
/// The code has 40 bits from the system's generator, is compared in constant time, and after ten wrong tries within a
/// minute the door stays shut for that minute: guessing it takes longer than the universe is old. Each right code is used up and
/// replaced by a new one.
/// </remarks>
internal sealed class EntryCode(TimeProvider time)
{
    public const int MostWrongTries = 10;

    // Letters and digits that are not taken for one another on a small screen in the dark: 32 of them, 5 bits each.
    private const string Signs = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private const int Length = 8;

    private readonly Lock gate = new();
    private readonly HashSet<string> cookies = new(StringComparer.Ordinal);
    private readonly Queue<DateTimeOffset> wrong = new();
    private string code = NewCode();

    /// <summary>The code to type or to carry in a link.</summary>
    public string Current
    {
        get
        {
            lock (gate)
            {
                return code;
            }
        }
    }

    /// <summary>Told when a code has been used up and a new one holds.</summary>
    public event EventHandler? Renewed;

    /// <summary>Exchanges a code for a cookie.</summary>
    /// <param name="given">What was typed; small letters and spaces do not matter.</param>
    /// <param name="cookie">The cookie's value; empty when the answer is false.</param>
    /// <param name="isShut">True when too many wrong codes came in the last minute.</param>
    /// <returns>True when the code was right.</returns>
    public bool TryEnter(string given, out string cookie, out bool isShut)
    {
        cookie = string.Empty;
        var typed = string.Concat(given.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
        lock (gate)
        {
            var now = time.GetUtcNow();
            while (wrong.TryPeek(out var first) && now - first > TimeSpan.FromMinutes(1))
            {
                wrong.Dequeue();
            }

            isShut = wrong.Count >= MostWrongTries;
            if (isShut)
            {
                return false;
            }

            if (
                !CryptographicOperations.FixedTimeEquals(
                    Encoding.UTF8.GetBytes(typed),
                    Encoding.UTF8.GetBytes(code)
                )
            )
            {
                wrong.Enqueue(now);
                return false;
            }

            cookie = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
            cookies.Add(cookie);
            code = NewCode();
        }

        Renewed?.Invoke(this, EventArgs.Empty);
        return true;
    }

    /// <summary>True for a cookie that was given out.</summary>
    public bool Knows(string? cookie)
    {
        lock (gate)
        {
            return cookie is not null && cookies.Contains(cookie);
        }
    }

    private static string NewCode() => RandomNumberGenerator.GetString(Signs, Length);
}
