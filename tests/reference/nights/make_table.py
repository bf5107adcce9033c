"""The Moon's periodic terms, as a table for the program.

Debian 12: apt-get install python3-pymeeus, then /usr/bin/python3 make_table.py ../../../src/Framing.Nights/Moon/MoonTerms.cs
The coefficients are those of Chapront-Touzé and Chapront (1988) as in Meeus, Astronomical Algorithms (1998), tables 47.A
and 47.B; the package carries them as numbers.
"""

import sys

from pymeeus.Moon import PERIODIC_TERMS_B_TABLE, PERIODIC_TERMS_LR_TABLE


def rows(table, columns):
    lines = []
    for row in table:
        multiples = [int(value) for value in row[:4]]
        amounts = [int(value) for value in row[4:]]
        assert len(amounts) == columns and amounts == [float(value) for value in row[4:]]
        amounts += [0] * (2 - columns)
        lines.append("        new(" + ", ".join(str(value) for value in multiples + amounts) + "),")
    return "\n".join(lines)


longitude = [row for row in PERIODIC_TERMS_LR_TABLE]
assert sum(1 for row in longitude if row[4]) == 59
assert sum(1 for row in longitude if row[5]) == 46
assert len(PERIODIC_TERMS_B_TABLE) == 60
with open(sys.argv[1], "w", encoding="utf-8", newline="\n") as out:
    out.write(f"""// Written by tests/reference/nights/make_table.py; change that, not this.
namespace Framing.Nights;

/// <summary>The periodic terms of the Moon's place.</summary>
/// <remarks>
/// Source: Chapront-Touzé and Chapront, Astron. Astrophys. 190, 342 (1988), as in Meeus, Astronomical Algorithms (1998),
/// tables 47.A and 47.B: 59 terms in longitude, 46 in distance, 60 in latitude.
/// </remarks>
internal static class MoonTerms
{{
    private static readonly MoonTerm[] Along =
    [
{rows(longitude, 2)}
    ];

    private static readonly MoonTerm[] Across =
    [
{rows(PERIODIC_TERMS_B_TABLE, 1)}
    ];

    /// <summary>Sines of the longitude in 1e-6 degree, cosines of the distance in metres.</summary>
    public static ReadOnlySpan<MoonTerm> LongitudeAndDistance => Along;

    /// <summary>Sines of the latitude in 1e-6 degree.</summary>
    public static ReadOnlySpan<MoonTerm> Latitude => Across;
}}
""")
