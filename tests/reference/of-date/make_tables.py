#!/usr/bin/python3
"""Writes the term tables of src/Framing.Sky/OfDate from the source files of ERFA 2.0.0.

    make_tables.py ERFA-SOURCE-FOLDER          (the folder that holds nut00b.c and epv00.c; Debian: apt-get source erfa)

Only the numbers are taken. Papers behind them:
  nutation      McCarthy & Luzum, Cel. Mech. Dyn. Astron. 85, 37-49 (2003): IAU 2000B, all 77 luni-solar terms
  Earth, Sun    Moisson & Bretagnon, Cel. Mech. Dyn. Astron. 80, 205-213 (2001): VSOP2000, simplified solution
                as fitted to DE405 over 1900-2100; here cut to the terms that move the velocity by more than
                LEAST_VELOCITY or the Sun-Earth vector by more than LEAST_POSITION anywhere in 1900-2200.
"""
import pathlib
import re
import sys

LEAST_VELOCITY = 3e-5  # au per Julian year: 0.14 m/s, 1e-4 arcsec of aberration
LEAST_POSITION = 1e-6  # au: 150 km, 0.2 arcsec of the Sun's direction
T = 50.0  # Julian years from J2000 at which terms with a power of time are judged

TARGET = pathlib.Path(__file__).resolve().parents[3] / "src/Framing.Sky/OfDate"
HEAD = "// Written by tests/reference/of-date/make_tables.py; change that, not this.\nnamespace Framing.Sky;\n\n"


def nutation(source):
    text = (source / "nut00b.c").read_text()
    body = re.search(r"\} x\[\] = \{(.*?)\n   \};", text, re.S)[1]
    body = re.sub(r"/\*.*?\*/", "", body, flags=re.S)
    rows = []
    for row in re.findall(r"\{(.*?)\}", body, re.S):
        values = [float(v) for v in row.split(",")]
        assert len(values) == 11 and all(v == int(v) for v in values)
        rows.append("        new(" + ", ".join(str(int(v)) for v in values) + "),\n")
    assert len(rows) == 77, len(rows)
    (TARGET / "NutationTerms.cs").write_text(
        HEAD
        + "/// <summary>The 77 luni-solar terms of the IAU 2000B nutation.</summary>\n"
        + "/// <remarks>Source: McCarthy and Luzum, Cel. Mech. Dyn. Astron. 85, 37–49 (2003); numbers as in ERFA 2.0.0, nut00b.</remarks>\n"
        + "internal static class NutationTerms\n{\n"
        + "    private static readonly NutationTerm[] Terms =\n    [\n" + "".join(rows) + "    ];\n\n"
        + "    /// <summary>All terms, the largest first.</summary>\n"
        + "    public static ReadOnlySpan<NutationTerm> All => Terms;\n}\n"
    )
    print("nutation terms:", len(rows))


def earth(source):
    text = (source / "epv00.c").read_text()
    kept = {"e": [], "s": []}
    for body, power, axis, numbers in re.findall(
        r"static const double ([es])(\d)([xyz])\[\] = \{(.*?)\};", text, re.S
    ):
        power = int(power)
        values = [v.strip() for v in numbers.replace("\n", " ").split(",") if v.strip()]
        assert len(values) % 3 == 0
        for a, b, c in zip(values[0::3], values[1::3], values[2::3]):
            amplitude, rate = abs(float(a)), abs(float(c))
            velocity = amplitude * max(rate * T**power, power * T ** (power - 1) if power else 0.0)
            position = amplitude * T**power if body == "e" else 0.0
            if velocity > LEAST_VELOCITY or position > LEAST_POSITION:
                row = ", ".join(repr(float(v)) for v in (a, b, c))
                kept[body].append(f"        new({'xyz'.index(axis)}, {power}, {row}),\n")
    (TARGET / "EarthTerms.cs").write_text(
        HEAD
        + "/// <summary>The terms of the Earth's and the Sun's motion, in the ecliptic frame of the theory.</summary>\n"
        + "/// <remarks>\n"
        + "/// Source: VSOP2000, Moisson and Bretagnon, Cel. Mech. Dyn. Astron. 80, 205–213 (2001); numbers as in ERFA 2.0.0, epv00,\n"
        + f"/// cut at {LEAST_VELOCITY:g} au per Julian year and, for the Earth, {LEAST_POSITION:g} au.\n"
        + "/// </remarks>\n"
        + "internal static class EarthTerms\n{\n"
        + "    private static readonly MotionTerm[] Earth =\n    [\n" + "".join(kept["e"]) + "    ];\n\n"
        + "    private static readonly MotionTerm[] Sun =\n    [\n" + "".join(kept["s"]) + "    ];\n\n"
        + "    /// <summary>The Earth as seen from the Sun.</summary>\n"
        + "    public static ReadOnlySpan<MotionTerm> EarthFromSun => Earth;\n\n"
        + "    /// <summary>The Sun as seen from the centre of mass of the solar system (slow terms that hardly move it are left out).</summary>\n"
        + "    public static ReadOnlySpan<MotionTerm> SunFromBarycentre => Sun;\n}\n"
    )
    print("Earth terms:", len(kept["e"]), "Sun terms:", len(kept["s"]))


if __name__ == "__main__":
    folder = pathlib.Path(sys.argv[1])
    nutation(folder)
    earth(folder)
