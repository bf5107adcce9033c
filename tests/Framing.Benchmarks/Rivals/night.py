#!/usr/bin/python3
"""night.py MINUTES RUNS RA DEC OUT.csv: Sun, Moon and a direction over a site at one-minute steps, by ERFA.

Debian: python3-erfa, python3-numpy. 2026-03-20 from 18:00 UTC on, longitude +10, latitude +47, 800 m, UT1 = UTC, no polar
motion, no air. The C library is called through its array functions, so that Python costs next to nothing: for each time one
eraApco13, two eraEpv00, one eraMoon98, three eraAtioq. Prints "name = number" lines; the time is a median in milliseconds.
"""
import statistics
import sys
import time

import erfa
import numpy as np

minutes, runs = int(sys.argv[1]), int(sys.argv[2])
ra, dec = np.radians(float(sys.argv[3])), np.radians(float(sys.argv[4]))
lon, lat, height = np.radians(10.0), np.radians(47.0), 800.0
light = erfa.AULT / erfa.DAYSEC  # days an astronomical unit


def place(vector, astrom):
    _, unit = erfa.pn(vector)
    proper = erfa.ab(unit, astrom["v"], astrom["em"], astrom["bm1"])
    right, declination = erfa.c2s(erfa.rxp(astrom["bpn"], proper))
    azimuth, zenith, *_ = erfa.atioq(erfa.anp(right), declination, astrom)
    return azimuth, np.pi / 2 - zenith


def night():
    utc1, utc2 = erfa.dtf2d("UTC", 2026, 3, 20, 18, 0, 0.0)
    utc2 = utc2 + np.arange(minutes) / 1440.0
    astrom, _ = erfa.apco13(utc1, utc2, 0.0, lon, lat, height, 0.0, 0.0, 0.0, 0.0, 0.0, 0.55)
    tt1, tt2 = erfa.taitt(*erfa.utctai(utc1, utc2))
    helio, bary = erfa.epv00(tt1, tt2)
    seen = bary["p"] - helio["p"] - astrom["eb"]
    earlier = tt2 - light * erfa.pm(seen)
    helio2, bary2 = erfa.epv00(tt1, earlier)
    sun = place(bary2["p"] - helio2["p"] - astrom["eb"], astrom)
    moon = erfa.moon98(tt1, tt2)
    far = light * erfa.pm(moon["p"] + bary["p"] - astrom["eb"])[:, None]
    luna = place(moon["p"] - far * moon["v"] + bary["p"] - far * bary["v"] - astrom["eb"], astrom)
    right, declination = erfa.atciqz(ra, dec, astrom)
    azimuth, zenith, *_ = erfa.atioq(right, declination, astrom)
    return sun, luna, (azimuth, np.pi / 2 - zenith)


answer, times = night(), []
for _ in range(runs):
    start = time.perf_counter()
    answer = night()
    times.append((time.perf_counter() - start) * 1e3)
print(f"night = {statistics.median(times):.4f}")
print(f"least = {min(times):.4f}")
with open(sys.argv[5], "w", encoding="ascii") as out:
    out.write("sun_deg,moon_deg,target_deg\n")
    for row in zip(*[np.degrees(altitude) for _, altitude in answer]):
        out.write(",".join(f"{value:.9f}" for value in row) + "\n")
