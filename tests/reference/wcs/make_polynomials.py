#!/usr/bin/env python3
"""The polynomials of src/Framing.Sky/Batches/DegreeLanes.cs, and values of the same functions to hold them against.

Debian: apt-get install python3-mpmath (written with mpmath 1.2.1).
Run:    /usr/bin/python3 tests/reference/wcs/make_polynomials.py
Prints: the coefficients, highest power first, and the largest error of each polynomial.
Writes: tests/Framing.Sky.Tests/Data/degree-functions.csv

w is the square of the argument. atan(t)/t in degrees, to tan 22.5 degrees; sin(r)/r and (cos(r) - 1)/r², r in degrees up to 45:
interpolation at Chebyshev nodes in 40 digits, which comes within a digit of the best polynomial there is. The values are 40-digit
functions of the double-precision arguments in the table, rounded once.
"""
import math
import pathlib
import random

import mpmath

mpmath.mp.dps = 40
OUT = pathlib.Path(__file__).resolve().parents[2] / "Framing.Sky.Tests" / "Data" / "degree-functions.csv"
DEGREE = mpmath.pi / 180
TINY = mpmath.mpf(10) ** -30


def atan(w):
    t = mpmath.sqrt(w)
    return 1 / DEGREE if abs(w) < TINY else mpmath.atan(t) / t / DEGREE


def sine(w):
    r = mpmath.sqrt(w)
    return DEGREE if abs(w) < TINY else mpmath.sin(r * DEGREE) / r


def cosine(w):
    return -(DEGREE**2) / 2 if abs(w) < 1e-12 else (mpmath.cos(mpmath.sqrt(w) * DEGREE) - 1) / w


def main():
    eighth = mpmath.tan(mpmath.pi / 8) ** 2 * mpmath.mpf("1.0001")
    for name, function, end, count in (("atan", atan, eighth, 12), ("sin", sine, 45.001**2, 7), ("cos", cosine, 45.001**2, 7)):
        terms, error = mpmath.chebyfit(function, [mpmath.mpf(0), mpmath.mpf(end)], count, error=True)
        print(name, f"largest error {float(error):.1e} of {float(abs(function(mpmath.mpf(0)))):.3g}")
        print("  " + "\n  ".join(repr(float(term)) for term in terms))

    draw = random.Random(20261125)
    with open(OUT, "w") as file:
        file.write("degrees,sin,cos,y,x,atan2_deg\n")
        for i in range(1000):
            degrees = draw.choice([draw.uniform(-45, 45), draw.uniform(-360, 720), draw.uniform(-1e6, 1e6),
                                   90.0 * draw.randrange(-8, 9) + draw.choice([-1, 1]) * 10 ** draw.uniform(-15, 1),
                                   float(45 * draw.randrange(-17, 18)), 10 ** draw.uniform(-30, 0)])
            y, x = (draw.choice([-1, 1]) * 10 ** draw.uniform(-draw.choice([1, 12, 60]), 1) for _ in range(2))
            if draw.random() < 0.2:
                x = draw.choice([-1, 1]) * y * draw.choice([1.0, 1.0 + 1e-12, math.tan(math.pi / 8), 1 / math.tan(math.pi / 8)])
            if draw.random() < 0.05:
                y = 0.0
            elif draw.random() < 0.05:
                x = 0.0
            # Whole turns go first: mpmath reduces degrees exactly, and sin and cos of its pi are good to 40 digits.
            turn = mpmath.mpf(degrees) * DEGREE
            quarter = degrees / 90.0
            sin = mpmath.mpf(0) if quarter % 2 == 0 else mpmath.sin(turn)
            cos = mpmath.mpf(0) if quarter % 2 == 1 else mpmath.cos(turn)
            angle = mpmath.atan2(mpmath.mpf(y), mpmath.mpf(x)) / DEGREE
            file.write(",".join(repr(float(v)) for v in (degrees, sin, cos, y, x, angle)) + "\n")


if __name__ == "__main__":
    main()
