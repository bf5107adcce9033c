"""Position angles of the direction towards galactic north, at places all over the sky.

Debian 12: apt-get install python3-erfa, then /usr/bin/python3 make.py ../../Framing.Workshop.Tests/Data/galactic-north.csv
ERFA 2.0.0 through pyerfa 2.0.0.1. Each place is taken to galactic coordinates (eraIcrs2g), moved north by 1e-5 rad of
galactic latitude, taken back (eraG2icrs), and seen from the first place (eraPas). No pole is named here.
"""

import sys

import erfa
import numpy as np

rng = np.random.default_rng(19970601)
count = 60
ra = rng.uniform(0.0, 2.0 * np.pi, count)
dec = np.arcsin(rng.uniform(-0.999, 0.999, count))
l, b = erfa.icrs2g(ra, dec)
ra2, dec2 = erfa.g2icrs(l, b + 1e-5)
pa = erfa.pas(ra, dec, ra2, dec2)
with open(sys.argv[1], "w", encoding="ascii", newline="\n") as out:
    out.write("ra_deg,dec_deg,galactic_north_pa_deg\n")
    for row in zip(np.degrees(ra), np.degrees(dec), np.degrees(pa) % 360.0):
        out.write(",".join(f"{value:.12f}" for value in row) + "\n")
