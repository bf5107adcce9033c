namespace Framing.Sky;

/// <summary>Makes one coordinate of its numbers.</summary>
internal static class CoordinateSide
{
    private static readonly string[] HourNames = ["hours", "minutes", "seconds"];
    private static readonly string[] DegreeNames = ["degrees", "minutes", "seconds"];

    /// <summary>True when numbers could be one coordinate, ranges apart: count, decimals, marks in their order.</summary>
    /// <param name="fields">The numbers.</param>
    public static bool HasShape(ReadOnlySpan<CoordinateField> fields) =>
        fields.Length is >= 1 and <= 3 && ShapeProblem(fields) is null;

    /// <summary>True when all numbers carry a mark, or none does.</summary>
    /// <param name="fields">The numbers.</param>
    public static bool IsUniform(ReadOnlySpan<CoordinateField> fields)
    {
        foreach (var field in fields)
        {
            if ((field.Mark == FieldMark.None) != (fields[0].Mark == FieldMark.None))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Makes a right ascension.</summary>
    /// <param name="fields">Its numbers, one or more.</param>
    /// <returns>0 to less than 360°, or what is wrong.</returns>
    public static Reading<Angle> RightAscension(ReadOnlySpan<CoordinateField> fields)
    {
        var inHours = fields[0].Mark switch
        {
            FieldMark.Hours => true,
            FieldMark.Degrees => false,
            _ => fields.Length > 1,
        };
        if (Problem(fields, inHours ? HourNames : DegreeNames) is { } problem)
        {
            return Reading<Angle>.Refused(problem);
        }

        if (fields[0].Sign == '-')
        {
            return Reading<Angle>.Refused(
                "it is negative, but runs from 0 to less than 24 hours (360 degrees)"
            );
        }

        var most = inHours ? 24.0 : 360.0;
        if (fields[0].Value >= most)
        {
            return Reading<Angle>.Refused(
                inHours
                    ? $"the hours are {fields[0].Text}, but run from 0 to less than 24"
                    : $"the degrees are {fields[0].Text}, but run from 0 to less than 360"
            );
        }

        var amount = Amount(fields);
        return Reading<Angle>.Of(inHours ? Angle.FromHours(amount) : Angle.FromDegrees(amount));
    }

    /// <summary>Makes a declination.</summary>
    /// <param name="fields">Its numbers, one or more.</param>
    /// <returns>-90° to +90°, or what is wrong.</returns>
    public static Reading<Angle> Declination(ReadOnlySpan<CoordinateField> fields)
    {
        if (fields[0].Mark == FieldMark.Hours)
        {
            return Reading<Angle>.Refused(
                $"{fields[0].Text} is in hours, but it is measured in degrees"
            );
        }

        if (Problem(fields, DegreeNames) is { } problem)
        {
            return Reading<Angle>.Refused(problem);
        }

        var amount = Amount(fields);
        return amount > 90.0
            ? Reading<Angle>.Refused("it is beyond the pole; it runs from -90 to +90 degrees")
            : Reading<Angle>.Of(Angle.FromDegrees(fields[0].Sign == '-' ? -amount : amount));
    }

    private static double Amount(ReadOnlySpan<CoordinateField> fields)
    {
        var amount = 0.0;
        for (var i = fields.Length - 1; i >= 0; i--)
        {
            amount = (amount / 60.0) + fields[i].Value;
        }

        return amount;
    }

    private static string? Problem(ReadOnlySpan<CoordinateField> fields, string[] names)
    {
        if (fields.Length > 3)
        {
            return $"there are too many parts: {fields[3].Text} is left over after {names[0]}, minutes and seconds";
        }

        if (ShapeProblem(fields) is { } problem)
        {
            return problem;
        }

        for (var i = 1; i < fields.Length; i++)
        {
            if (fields[i].Value >= 60.0)
            {
                return $"the {names[i]} are {fields[i].Text}, but run from 0 to less than 60";
            }
        }

        return null;
    }

    private static string? ShapeProblem(ReadOnlySpan<CoordinateField> fields)
    {
        var last = fields.Length - 1;
        for (var i = 0; i < fields.Length; i++)
        {
            if (i > 0 && fields[i].Sign != '\0')
            {
                return $"a sign stands inside it, before {fields[i].Text[1..]}";
            }

            if (i < last && fields[i].HasDecimals)
            {
                return $"{fields[i].Text} has decimals, but only the last part may have them";
            }

            if (!MarkFits(fields[i].Mark, i, fields[0].Mark))
            {
                return i == 0
                    ? $"{fields[i].Text} stands first, where hours (h) or degrees (d or °) belong"
                    : $"{fields[i].Text} stands where the {DegreeNames[i]} belong";
            }
        }

        return null;
    }

    private static bool MarkFits(FieldMark mark, int place, FieldMark first) =>
        mark == FieldMark.None
        || (place, mark) switch
        {
            (0, FieldMark.Hours or FieldMark.Degrees) => true,
            (1, FieldMark.Minutes) => true,
            (2, FieldMark.Seconds) => true,
            // A prime is a minute of arc, a double prime a second of arc; neither goes with hours.
            (1, FieldMark.ArcMinutes) => first != FieldMark.Hours,
            (2, FieldMark.ArcSeconds) => first != FieldMark.Hours,
            _ => false,
        };
}
