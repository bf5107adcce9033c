using System.Runtime.InteropServices;

namespace Framing.Sky;

/// <summary>Reads right ascension and declination as people and machines write them.</summary>
/// <remarks>
/// <para>
/// Fields are parted by spaces or colons or carry marks (h m s, d deg ° ' ′ " ″); both minus signs are known; decimals
/// stand in the last field only. A decimal comma is taken where spaces part the fields. The sign belongs to the whole
/// value, so that "-00 30 00" is half a degree south.
/// </para>
/// <para>
/// A right ascension of several fields is in hours unless it says degrees; a single number without a mark is in degrees.
/// "40.2, 61.1" therefore is in degrees, and "2h 41m, +60.9" means what it says.
/// </para>
/// <para>
/// Refusals are one line: which part, what it says, what would be right. Nothing is guessed: where a text could mean two
/// things, the line says how to write it.
/// </para>
/// </remarks>
public static class CoordinateReader
{
    private const string RightAscensionName = "right ascension";
    private const string DeclinationName = "declination";
    private const string RightAscensionExample =
        "\"05 35 17.3\", \"5h 35m 17.3s\" or degrees such as \"83.822\"";
    private const string DeclinationExample =
        "\"-05 23 28\", \"-5d 23m 28s\" or degrees such as \"-5.391\"";

    private delegate Reading<Angle> Maker(ReadOnlySpan<CoordinateField> fields);

    /// <summary>Reads a right ascension.</summary>
    /// <param name="text">Hours, minutes and seconds, or one number in degrees, or either with marks.</param>
    /// <returns>The right ascension, 0 to less than 360°, or what is wrong.</returns>
    public static Reading<Angle> ReadRightAscension(string? text) =>
        ReadOne(
            text ?? "",
            RightAscensionName,
            RightAscensionExample,
            CoordinateSide.RightAscension
        );

    /// <summary>Reads a declination.</summary>
    /// <param name="text">Degrees, with or without minutes and seconds.</param>
    /// <returns>The declination, -90° to +90°, or what is wrong.</returns>
    public static Reading<Angle> ReadDeclination(string? text) =>
        ReadOne(text ?? "", DeclinationName, DeclinationExample, CoordinateSide.Declination);

    /// <summary>Reads a right ascension and a declination, parted by a comma, a sign, or evenly by spaces.</summary>
    /// <param name="text">Such as "07 21 14.4 +31 42 19", "2h 41m, +60.9", "40.2, 61.1" (degrees).</param>
    /// <returns>The direction, or what is wrong.</returns>
    public static Reading<SkyDirection> ReadDirection(string? text)
    {
        text = (text ?? "").Trim();
        if (text.Length == 0)
        {
            return Refuse(
                $"the position is missing: the text is empty; write {RightAscensionName} and {DeclinationName} such as \"05 35 17.3 -05 23 28\""
            );
        }

        var comma = FindSeparatingComma(text, out var problem);
        if (problem is not null)
        {
            return Refuse($"position {CoordinateLexer.Quote(text)}: {problem}");
        }

        return comma >= 0
            ? ReadParted(text[..comma].Trim(), text[(comma + 1)..].Trim())
            : ReadTogether(text);
    }

    private static Reading<Angle> ReadOne(string text, string name, string example, Maker make)
    {
        text = text.Trim();
        if (text.Length == 0)
        {
            return Reading<Angle>.Refused(
                $"the {name} is missing: the text is empty; write {example}"
            );
        }

        if (CoordinateLexer.Split(text, text.Any(char.IsWhiteSpace), out var fields) is { } problem)
        {
            return Reading<Angle>.Refused(
                $"{name} {CoordinateLexer.Quote(text)}: {problem}; write {example}"
            );
        }

        return Named(make(CollectionsMarshal.AsSpan(fields)), name, text);
    }

    private static Reading<Angle> Named(Reading<Angle> reading, string name, string text) =>
        reading.TryGet(out _, out var problem)
            ? reading
            : Reading<Angle>.Refused($"{name} {CoordinateLexer.Quote(text)}: {problem}");

    /// <summary>Finds the comma that parts the two coordinates; -1 where commas, if any, mark decimals.</summary>
    private static int FindSeparatingComma(string text, out string? problem)
    {
        problem = null;
        var parting = -1;
        var tight = 0;
        var last = -1;
        for (var i = text.IndexOf(','); i >= 0; i = text.IndexOf(',', i + 1))
        {
            // A decimal comma has a digit on both sides.
            if (
                i > 0
                && i + 1 < text.Length
                && char.IsAsciiDigit(text[i - 1])
                && char.IsAsciiDigit(text[i + 1])
            )
            {
                tight++;
                last = i;
            }
            else if (parting >= 0)
            {
                problem = "there is more than one comma between the coordinates; write one";
            }
            else
            {
                parting = i;
            }
        }

        if (tight == 0 || problem is not null)
        {
            return parting;
        }

        if (parting >= 0)
        {
            problem = "a comma parts the coordinates, so decimals need a point";
        }
        else if (!text.Any(char.IsWhiteSpace))
        {
            parting = last;
            problem =
                tight == 1 ? null : "decimals need a point where a comma parts the coordinates";
        }
        else if (tight == 1 && text.AsSpan(1).IndexOfAny("+-\u2212") < 0)
        {
            problem =
                "the comma could mark decimals or part the coordinates; write decimals with a point, or a space after the comma";
        }

        return parting;
    }

    private static Reading<SkyDirection> ReadParted(string first, string second)
    {
        if (
            Fields(first, RightAscensionName, RightAscensionExample, out var left) is
            { } leftProblem
        )
        {
            return Refuse(leftProblem);
        }

        return
            Fields(second, DeclinationName, DeclinationExample, out var right) is { } rightProblem
            ? Refuse(rightProblem)
            : Combine(
                CollectionsMarshal.AsSpan(left),
                first,
                CollectionsMarshal.AsSpan(right),
                second
            );
    }

    private static string? Fields(
        string text,
        string name,
        string example,
        out List<CoordinateField> fields
    )
    {
        if (text.Length == 0)
        {
            fields = [];
            return $"the {name} is missing: its side of the comma is empty; write {example}";
        }

        return CoordinateLexer.Split(text, commaIsDecimal: false, out fields) is { } problem
            ? $"{name} {CoordinateLexer.Quote(text)}: {problem}; write {example}"
            : null;
    }

    private static Reading<SkyDirection> ReadTogether(string text)
    {
        if (CoordinateLexer.Split(text, commaIsDecimal: true, out var list) is { } problem)
        {
            return Refuse(
                $"position {CoordinateLexer.Quote(text)}: {problem}; write {RightAscensionName} and {DeclinationName} such as \"05 35 17.3 -05 23 28\" or \"83.822, -5.391\""
            );
        }

        var fields = CollectionsMarshal.AsSpan(list);
        if (fields.Length == 1)
        {
            return Refuse(
                $"position {CoordinateLexer.Quote(text)}: the {DeclinationName} is missing; write both, such as \"83.822, -5.391\""
            );
        }

        var boundary = FindBoundary(fields);
        return boundary > 0
            ? Combine(
                fields[..boundary],
                text[..fields[boundary].Start].TrimEnd(),
                fields[boundary..],
                text[fields[boundary].Start..]
            )
            : Refuse(
                $"position {CoordinateLexer.Quote(text)}: it does not show where the {RightAscensionName} ends; put a comma or a sign before the {DeclinationName}"
            );
    }

    /// <summary>The number with which the declination begins; 0 where the text leaves it open.</summary>
    private static int FindBoundary(ReadOnlySpan<CoordinateField> fields)
    {
        for (var i = 1; i < fields.Length; i++)
        {
            if (fields[i].Sign != '\0')
            {
                return i;
            }
        }

        var uniform = OnlyBoundary(fields, mustBeUniform: true);
        return uniform >= 0 ? uniform : Math.Max(0, OnlyBoundary(fields, mustBeUniform: false));
    }

    /// <summary>The one place where the numbers part into two coordinates; 0 when there are several, -1 when there is none.</summary>
    private static int OnlyBoundary(ReadOnlySpan<CoordinateField> fields, bool mustBeUniform)
    {
        var found = -1;
        for (var i = 1; i < fields.Length; i++)
        {
            var left = fields[..i];
            var right = fields[i..];
            if (
                fields[i].IsJoined
                || !CoordinateSide.HasShape(left)
                || !CoordinateSide.HasShape(right)
                || (
                    mustBeUniform
                    && !(CoordinateSide.IsUniform(left) && CoordinateSide.IsUniform(right))
                )
            )
            {
                continue;
            }

            // Bare numbers part evenly: two and two, three and three.
            if (left.Length == right.Length)
            {
                return i;
            }

            found = found < 0 ? i : 0;
        }

        return found;
    }

    private static Reading<SkyDirection> Combine(
        ReadOnlySpan<CoordinateField> left,
        string leftText,
        ReadOnlySpan<CoordinateField> right,
        string rightText
    )
    {
        if (left.Length == 1 && left[0].Mark == FieldMark.None && right.Length > 1)
        {
            return Refuse(
                $"{RightAscensionName} {CoordinateLexer.Quote(leftText)}: beside a {DeclinationName} in degrees and minutes it could be hours or degrees; write {left[0].Text}h or {left[0].Text}d"
            );
        }

        if (
            !Named(CoordinateSide.RightAscension(left), RightAscensionName, leftText)
                .TryGet(out var ra, out var problem)
        )
        {
            return Refuse(problem);
        }

        return Named(CoordinateSide.Declination(right), DeclinationName, rightText)
            .TryGet(out var dec, out problem)
            ? Reading<SkyDirection>.Of(SkyDirection.FromRaDec(ra, dec))
            : Refuse(problem);
    }

    private static Reading<SkyDirection> Refuse(string problem) =>
        Reading<SkyDirection>.Refused(problem);
}
