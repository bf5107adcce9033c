"""Galactic coordinates of places all over the sky, from ERFA.

Debian 12: apt-get install python3-erfa, then
/usr/bin/python3 make_places.py ../../Framing.Sky.Tests/Data/galactic-places.csv
ERFA 2.0.0 through pyerfa 2.0.0.1 (eraIcrs2g).
"""

import sys

import erfa
import numpy as np

rng = np.random.default_rng(19580101)
count = 200
ra = rng.uniform(0.0, 2.0 * np.pi, count)
dec = np.arcsin(rng.uniform(-1.0, 1.0, count))
# the poles of the equator, the origin, the galactic poles and places close to them
extra = [(0.0, np.pi / 2), (0.0, -np.pi / 2)] + [
    erfa.g2icrs(*np.radians(place))
    for place in ((0, 0), (90, 0), (180, 0), (270, 0), (10, 89.999), (200, 89.9), (300, -89.999), (20, -89.9))
]
ra = np.concatenate([ra, [place[0] for place in extra]])
dec = np.concatenate([dec, [place[1] for place in extra]])
l, b = erfa.icrs2g(ra, dec)
with open(sys.argv[1], "w", encoding="ascii", newline="\n") as out:
    out.write("ra_deg,dec_deg,l_deg,b_deg\n")
    for row in zip(np.degrees(ra), np.degrees(dec), np.degrees(l) % 360.0, np.degrees(b)):
        out.write(",".join(f"{value:.13f}" for value in row) + "\n")
